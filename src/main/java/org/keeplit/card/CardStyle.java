package org.keeplit.card;

/** How sheets look. Black on white throughout; grey only where the contrast is that of text, see the test. */
final class CardStyle {
    /** The colour of text. */
    static final String INK = "#000000";
    /** The colour of notes, and of the words across a sheet that is not proved. */
    static final String FAINT = "#4a4a4a";
    /** The ground of all. */
    static final String GROUND = "#ffffff";

    private static final String EVERYWHERE = "*{box-sizing:border-box}"
            + "body{margin:0;background:" + GROUND + ";color:" + INK
            + ";font:8.6pt/1.28 \"DejaVu Sans\",\"Liberation Sans\",Arial,sans-serif}"
            + ".sheet{position:relative;width:126mm;margin:0 auto;page-break-after:always;break-after:page}"
            + ".sheet:last-child{page-break-after:auto;break-after:auto}"
            + "@media screen{.sheet{margin:6mm auto;padding:4mm;width:134mm;border:1px solid " + INK + "}}"
            + "h1{font-size:10.5pt;margin:0}h2{font-size:9.6pt;margin:0}h2.part{font-size:8.6pt;margin:1.2mm 0 0}"
            + "p{margin:.6mm 0}ul{margin:.3mm 0 .6mm;padding-left:4mm}li{margin:0}"
            + "header{border-bottom:1.5pt solid " + INK + ";padding-bottom:1mm;margin-bottom:1.5mm}"
            + "footer{border-top:1pt solid " + INK + ";margin-top:2mm;padding-top:1mm;font-size:7.2pt}"
            + ".note{color:" + FAINT + "}"
            + ".card{border:1.2pt solid " + INK + ";padding:1.2mm 2mm;margin-bottom:1.6mm;page-break-inside:avoid;break-inside:avoid}"
            + ".other{border-left:1.2pt dashed " + INK + ";padding-left:2mm;margin:0 0 1.2mm}"
            + ".number{display:inline-block;min-width:8mm;border:1.2pt solid " + INK + ";text-align:center;margin-right:1.5mm}"
            + ".caution{border:1.5pt solid " + INK + ";padding:.6mm 1.5mm;font-weight:bold}"
            + ".box{display:inline-block;width:3.6mm;height:3.6mm;border:1.1pt solid " + INK
            + ";vertical-align:-.6mm;margin-right:1.5mm}"
            + ".blank{display:inline-block;width:38mm;border-bottom:.8pt solid " + INK + "}"
            + ".bar{background:" + INK + ";color:" + GROUND + ";font-weight:bold;padding:1mm 2mm;text-align:center}"
            + ".across{position:absolute;top:70mm;left:0;width:126mm;text-align:center;font-size:30pt;font-weight:bold;color:"
            + FAINT + ";border:3pt solid " + FAINT + ";transform:rotate(-24deg);z-index:-1}"
            + ".pages{white-space:nowrap}"
            + "svg{width:100%;height:auto;display:block}"
            + "table{border-collapse:collapse;width:100%}td{border:.8pt solid " + INK + ";padding:.6mm 1.2mm;vertical-align:top}"
            // Margins do not run together across it: pieces are as high together as one by one.
            + ".piece{padding:.05mm 0}";

    private CardStyle() {}

    /** {@return the style sheet} @param paper what is printed on */
    static String of(Paper paper) {
        return paper.page() + EVERYWHERE;
    }

    /** {@return the same on paper that never ends, to measure on} */
    static String endless() {
        return "@page{size:148mm 60000mm;margin:8mm 11mm}" + EVERYWHERE;
    }
}
