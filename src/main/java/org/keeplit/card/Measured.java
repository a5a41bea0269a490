package org.keeplit.card;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.page.Pdf;

/** How high pieces come out on paper, measured once for all readers of a set: most pieces are on several of their sheets. */
final class Measured {
    private final Map<String, Double> heights = new HashMap<>();

    /** Measures what was not measured yet. @param pieces well-formed pieces of a sheet, with all that is around them */
    void add(List<String> pieces) {
        List<String> fresh = pieces.stream().distinct().filter(piece -> !heights.containsKey(piece)).toList();
        if (fresh.isEmpty()) {
            return;
        }
        StringBuilder page = new StringBuilder("<html><head><title>Pieces</title><style>").append(CardStyle.endless())
                .append("</style></head><body><section class=\"sheet\">");
        for (int i = 0; i < fresh.size(); i++) {
            page.append("<div class=\"piece\" id=\"p").append(i).append("\">").append(fresh.get(i)).append("</div>");
        }
        Map<String, Double> found = Pdf.heights(page.append("</section></body></html>").toString());
        for (int i = 0; i < fresh.size(); i++) {
            heights.put(fresh.get(i), found.get("p" + i));
        }
    }

    /** {@return how high a piece is, in mm} @param piece one that was measured */
    double height(String piece) {
        return heights.get(piece);
    }
}
