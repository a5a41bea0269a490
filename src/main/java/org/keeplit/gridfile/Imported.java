package org.keeplit.gridfile;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.keeplit.text.Problem;

/**
 * What came of reading grid files.
 *
 * @param network the name of the network
 * @param text the network as a text file in its canonical form; empty if the files have mistakes
 * @param elements how many elements it has
 * @param listing what became of every object
 * @param problems what is wrong with the files, in their order
 */
public record Imported(String network, String text, int elements, Listing listing, ImmutableList<Problem> problems) {
    /** {@return the same with another text} */
    Imported with(String other) {
        return new Imported(network, other, elements, listing, problems);
    }

    /**
     * What became of every object of the files.
     *
     * @param rows a count for each class, sorted
     * @param carried the objects that became elements
     * @param left the objects of which nothing is carried
     * @param changed what is carried differently than it stands in the file
     * @param unread attributes of carried objects that are not carried
     */
    public record Listing(List<Row> rows, List<Carried> carried, List<Remark> left, List<Remark> changed, List<Unread> unread) {
        /** Makes a listing; it keeps copies. */
        public Listing {
            rows = List.copyOf(rows);
            carried = List.copyOf(carried);
            left = List.copyOf(left);
            changed = List.copyOf(changed);
            unread = List.copyOf(unread);
        }

        /** {@return whether anything that carries current or serves customers was left out} */
        public boolean lacksEquipment() {
            return left.stream().anyMatch(r -> Reasons.isEquipment(r.type()));
        }
    }

    /**
     * A class.
     *
     * @param type its name
     * @param objects how many objects it has
     * @param elements how many of them became elements
     * @param parts how many gave figures to elements, or say how they hang together
     * @param left of how many nothing is carried
     */
    public record Row(String type, int objects, int elements, int parts, int left) {}

    /** An object that became an element. @param type its class @param name its name @param id its mRID @param element the element's name */
    public record Carried(String type, String name, String id, String element) {}

    /**
     * A word on one object.
     *
     * @param type its class
     * @param name its name, else its mRID
     * @param id its mRID
     * @param file its file
     * @param line where it begins, from 1
     * @param text a half sentence
     */
    public record Remark(String type, String name, String id, String file, int line, String text) {}

    /** An attribute of carried objects that nothing reads. @param type their class @param attribute its full name @param objects how many have it */
    public record Unread(String type, String attribute, int objects) {}
}
