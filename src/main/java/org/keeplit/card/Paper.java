package org.keeplit.card;

/** The paper that a set of cards is printed on; one layout fits both. */
public enum Paper {
    /** A5, 148 mm by 210 mm (ISO 216). */
    A5("148mm 210mm", "8mm 11mm", 194),
    /** Half of a Letter sheet, 5.5 in by 8.5 in. */
    HALF_LETTER("5.5in 8.5in", "11mm 6.8mm", 193.9);

    private final String size;
    private final String margin;

    private final double room;

    Paper(String size, String margin, double room) {
        this.room = room;
        this.size = size;
        this.margin = margin;
    }

    /** {@return the rule of the style sheet for pages} */
    String page() {
        return "@page{size:" + size + ";margin:" + margin + "}";
    }

    /** {@return the height between the margins, in mm} */
    double room() {
        return room;
    }
}
