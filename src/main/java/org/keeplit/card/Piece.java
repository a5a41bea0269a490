package org.keeplit.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

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

    /** {@return a text in parts of at most so many lines, cut between words} @param most 1 or more */
    static List<String> parts(String text, double most) {
        int width = (int) Math.max(1, most - 1) * WIDTH;
        List<String> parts = new ArrayList<>();
        String left = text;
        while (left.length() > width) {
            int cut = left.lastIndexOf(' ', width);
            int end = cut > width / 2 ? cut : width;
            parts.add(left.substring(0, end).strip());
            left = left.substring(end).strip();
        }
        parts.add(left);
        return parts;
    }

    /**
     * {@return a picture in bands one below another, each with a little of the one before}
     *
     * @param svg the picture
     * @param bands how many, 1 or more
     */
    static List<String> bands(String svg, int bands) {
        int from = svg.indexOf("viewBox=\"") + 9;
        int to = svg.indexOf('"', from);
        String[] box = svg.substring(from, to).split(" ");
        double top = Double.parseDouble(box[1]);
        double height = Double.parseDouble(box[3]);
        double each = height / bands;
        double more = bands == 1 ? 0 : each * OVERLAP;
        List<String> all = new ArrayList<>();
        for (int i = 0; i < bands; i++) {
            double start = i == 0 ? top : top + i * each - more;
            String view = String.format(Locale.ROOT, "%s %.2f %s %.2f", box[0], start, box[2], top + (i + 1) * each - start);
            all.add(bands == 1 ? svg : svg.substring(0, from) + view + svg.substring(to));
        }
        return all;
    }

    /** How much of the band before a band shows again. */
    static final double OVERLAP = 0.1;

    /** No picture is drawn at less than this share of the width, so that it can be read. */
    static final double SMALLEST = 0.6;

    /** The height of a line in mm. */
    static final double LINE = 3.9;
}
