package org.keeplit.gridfile;

import com.google.common.collect.ArrayListMultimap;
import com.google.common.collect.ListMultimap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.keeplit.language.FreeNames;

/** What became of every object: an element of the network, figures of one, or nothing, with the reason. No object is without an entry. */
final class Ledger {
    private record Entry(boolean element, String as, String reason) {}

    private final CimModel model;
    private final Map<CimObject, Entry> entries = new HashMap<>();
    private final ListMultimap<CimObject, String> notes = ArrayListMultimap.create();

    Ledger(CimModel model) {
        this.model = model;
    }

    /** An object became an element. @param name the element's */
    void element(CimObject object, String name) {
        entries.putIfAbsent(object, new Entry(true, name, ""));
    }

    /** An object's figures stand in an element, or it says how things hang together. */
    void part(CimObject object) {
        entries.putIfAbsent(object, new Entry(false, "", ""));
    }

    /** An object is not carried. @param reason why, as a half sentence */
    void left(CimObject object, String reason) {
        entries.putIfAbsent(object, new Entry(false, "", reason));
    }

    /** Something of an object that is carried is not, or not as it stands. @param what a half sentence */
    void note(CimObject object, String what) {
        notes.put(object, what);
    }

    boolean knows(CimObject object) {
        return entries.containsKey(object);
    }

    /** {@return the list of all that was found} */
    Imported.Listing listing() {
        List<Imported.Row> rows = new ArrayList<>();
        List<Imported.Carried> carried = new ArrayList<>();
        List<Imported.Remark> left = new ArrayList<>();
        List<Imported.Remark> changed = new ArrayList<>();
        for (String type : model.types().stream().sorted().toList()) {
            int elements = 0;
            int parts = 0;
            List<Imported.Remark> own = new ArrayList<>();
            String whole = reason(type);
            for (CimObject object : model.all(type)) {
                Entry entry = entries.getOrDefault(object, new Entry(false, "", whole));
                if (entry.element) {
                    elements++;
                    carried.add(new Imported.Carried(type, object.name(), object.id(), entry.as));
                } else if (entry.reason.isEmpty()) {
                    parts++;
                } else {
                    own.add(remark(object, entry.reason));
                }
                notes.get(object).forEach(note -> changed.add(remark(object, note)));
            }
            rows.add(new Imported.Row(type, model.all(type).size(), elements, parts, own.size()));
            left.addAll(own);
        }
        return new Imported.Listing(rows, carried, left, changed, unread());
    }

    private Imported.Remark remark(CimObject object, String text) {
        return new Imported.Remark(object.type(), object.name(), object.id(), model.files().get(object.file()).toString(), object.line(), text);
    }

    /** {@return why objects of a class that no translation looked at are not carried} */
    private String reason(String type) {
        String known = Reasons.of(type);
        if (!known.isEmpty()) {
            return known;
        }
        return "keeplit carries no such class" + FreeNames.didYouMean(type, Reasons.carried()).map(n -> "; " + n).orElse("");
    }

    /** {@return attributes of carried objects that no translation reads, with the number of objects that have them} */
    private List<Imported.Unread> unread() {
        Map<String, Map<String, Integer>> counts = new TreeMap<>();
        for (CimObject object : model.all()) {
            Entry entry = entries.get(object);
            if (entry == null || !entry.reason.isEmpty()) {
                continue;
            }
            for (int i = 0; i < object.size(); i++) {
                if (!model.isRead(object.type(), object.key(i)) && !Reasons.isIdentity(object.key(i))) {
                    counts.computeIfAbsent(object.type(), t -> new LinkedHashMap<>()).merge(object.key(i), 1, Integer::sum);
                }
            }
        }
        List<Imported.Unread> all = new ArrayList<>();
        counts.forEach((type, keys) -> keys.forEach((key, many) -> all.add(new Imported.Unread(type, key, many))));
        return all;
    }
}
