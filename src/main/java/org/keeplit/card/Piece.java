package org.keeplit.card;

/**
 * A piece of a sheet that is not taken apart.
 *
 * @param html the piece
 * @param lines about how many lines of text it is high
 */
record Piece(String html, double lines) {
    /** About how many characters a line holds. */
    private static final int WIDTH = 66;

    /** {@return about how many lines a text takes} */
    static int lines(String text) {
        return 1 + text.length() / WIDTH;
    }

    /** {@return the same for several texts, each on lines of its own} */
    static int lines(Iterable<String> texts) {
        int all = 0;
        for (String text : texts) {
            all += lines(text);
        }
        return all;
    }

    /** {@return about how many lines high a picture is, from its view box} */
    static double pictureLines(String svg) {
        String box = svg.substring(svg.indexOf("viewBox=\"") + 9);
        String[] numbers = box.substring(0, box.indexOf('"')).split(" ");
        double millimetres = 122 * Double.parseDouble(numbers[3]) / Double.parseDouble(numbers[2]);
        return millimetres / LINE;
    }

    /** The height of a line in mm. */
    static final double LINE = 3.9;
}
