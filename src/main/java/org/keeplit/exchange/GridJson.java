package org.keeplit.exchange;

import com.google.gson.JsonElement;
import org.keeplit.gridfile.Imported;

/** JSON of what became of grid files. */
final class GridJson {
    private GridJson() {}

    static JsonElement imported(Imported one) {
        return new Tree()
                .put("network", one.network())
                .put("elements", one.elements())
                .put("whole", !one.listing().lacksEquipment())
                .list("classes", one.listing().rows(), r -> new Tree()
                        .put("class", r.type())
                        .put("objects", r.objects())
                        .put("elements", r.elements())
                        .put("figures", r.parts())
                        .put("left", r.left())
                        .done())
                .list("carried", one.listing().carried(), c -> new Tree()
                        .put("class", c.type())
                        .put("name", c.name())
                        .put("mrid", c.id())
                        .put("element", c.element())
                        .done())
                .list("left", one.listing().left(), GridJson::remark)
                .list("changed", one.listing().changed(), GridJson::remark)
                .list("attributes", one.listing().unread(), u -> new Tree()
                        .put("class", u.type())
                        .put("attribute", u.attribute())
                        .put("objects", u.objects())
                        .done())
                .done();
    }

    private static JsonElement remark(Imported.Remark remark) {
        return new Tree()
                .put("class", remark.type())
                .put("name", remark.name())
                .put("mrid", remark.id())
                .put("file", Where.file(remark.file()))
                .put("line", remark.line())
                .put("reason", remark.text())
                .done();
    }
}
