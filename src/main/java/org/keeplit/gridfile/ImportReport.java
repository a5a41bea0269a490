package org.keeplit.gridfile;

import com.google.common.collect.ImmutableListMultimap;
import com.google.common.collect.Multimaps;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Tells what became of grid files: the network, a count for each class, and everything that is not carried or not as it stands. */
public final class ImportReport {
    /** Of a reason that many objects of a class share, so many are named, unless everything is told. */
    private static final int NAMED = 6;

    private final boolean full;

    /** Makes a report. @param full whether every object is named, however many share a reason */
    public ImportReport(boolean full) {
        this.full = full;
    }

    /** {@return the text} @param one what came of the files */
    public String tell(Imported one) {
        StringBuilder text = new StringBuilder();
        Imported.Listing listing = one.listing();
        int objects = listing.rows().stream().mapToInt(Imported.Row::objects).sum();
        text.append("network ").append(one.network()).append(": ").append(one.elements()).append(" elements from ").append(objects)
                .append(" objects of ").append(listing.rows().size()).append(" classes\n\n");
        rows(listing, text);
        section("Not carried", listing.left(), text);
        section("Carried differently", listing.changed(), text);
        if (!listing.unread().isEmpty()) {
            text.append("\nNot carried of what is carried, by attribute\n");
            Multimaps.index(listing.unread(), Imported.Unread::type).asMap().forEach((type, all) -> text.append("  ").append(type).append(": ")
                    .append(all.stream().map(u -> u.attribute().substring(u.attribute().indexOf('.') + 1)).collect(Collectors.joining(", "))).append('\n'));
        }
        names(listing, text);
        text.append('\n').append(listing.lacksEquipment()
                ? "Some of what carries current or serves customers is not carried: the network is not the whole feeder.\n"
                : "All that carries current or serves customers is carried.\n");
        text.append("What the files do not say is not in it: how a device trips, what stands beside what, who depends on a load. Look it through before it is used.\n");
        return text.toString();
    }

    private static void rows(Imported.Listing listing, StringBuilder text) {
        int widest = listing.rows().stream().mapToInt(r -> r.type().length()).max().orElse(0);
        String form = "%-" + Math.max(5, widest) + "s %8s %9s %7s %6s%n";
        text.append(String.format(form, "class", "objects", "elements", "figures", "left"));
        for (Imported.Row row : listing.rows()) {
            text.append(String.format(form, row.type(), row.objects(), blank(row.elements()), blank(row.parts()), blank(row.left())));
        }
    }

    private static String blank(int count) {
        return count == 0 ? "" : String.valueOf(count);
    }

    private void section(String heading, List<Imported.Remark> remarks, StringBuilder text) {
        if (remarks.isEmpty()) {
            return;
        }
        text.append('\n').append(heading).append('\n');
        // Objects of one class with one reason stand together, in the order of the first.
        ImmutableListMultimap<String, Imported.Remark> alike = Multimaps.index(remarks, r -> r.type() + "\n" + r.text());
        alike.asMap().forEach((key, same) -> {
            List<Imported.Remark> all = new ArrayList<>(same);
            boolean short_ = !full && all.size() > NAMED;
            String names = all.stream().limit(short_ ? NAMED : all.size()).map(r -> r.name() + " (" + r.file() + ":" + r.line() + ")").collect(Collectors.joining(", "));
            text.append("  ").append(all.get(0).type()).append(all.size() > 1 ? ", " + all.size() + " objects" : "").append(": ").append(all.get(0).text()).append('\n');
            text.append("    ").append(names).append(short_ ? ", and " + (all.size() - NAMED) + " more" : "").append('\n');
        });
    }

    private void names(Imported.Listing listing, StringBuilder text) {
        List<Imported.Carried> other = listing.carried().stream().filter(c -> !c.name().equals(c.element())).toList();
        if (other.isEmpty()) {
            return;
        }
        text.append("\nCalled otherwise, since names are unique, begin with a small letter and have letters, digits and hyphens\n");
        other.stream().limit(full ? other.size() : 40).forEach(c -> text.append("  ").append(c.type()).append(' ').append(c.name()).append(" is ").append(c.element()).append('\n'));
        if (!full && other.size() > 40) {
            text.append("  and ").append(other.size() - 40).append(" more; --full names them\n");
        }
    }
}
