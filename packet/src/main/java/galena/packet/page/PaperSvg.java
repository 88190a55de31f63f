package galena.packet.page;

import java.util.Locale;

/**
 * Fits a drawing for paper: the rules for dark screens go, colours of the paper become white, the size is given in millimetres as
 * the printed page wants it.
 */
final class PaperSvg {
    private static final double WIDEST = 176;
    private static final double TALLEST = 225;
    /** A drawing's unit at its largest: text of 11 units is 2.9 mm then. */
    private static final double LARGEST_UNIT = 0.26;

    /** Charts are read at a smaller size than schematics: three of them fill a sheet. */
    private static final double CHART_UNIT = 0.175;

    private PaperSvg() {}

    static String of(String svg, String words) {
        String plain = withoutMedia(svg)
                .replaceAll("font-family:[^;}]*", "font-family:Packet")
                .replace("<rect class=\"paper\"", "<rect fill=\"#ffffff\"");
        String[] box = plain.replaceFirst("(?s).*?viewBox=\"([^\"]*)\".*", "$1").split(" ");
        double width = Double.parseDouble(box[2]), height = Double.parseDouble(box[3]);
        double largest = svg.contains("class=\"galena\"") ? CHART_UNIT : LARGEST_UNIT;
        double unit = Math.min(largest, Math.min(WIDEST / width, TALLEST / height));
        String size = String.format(Locale.ROOT, "style=\"width:%.1fmm;height:%.1fmm\" ", width * unit, height * unit);
        return plain.replaceFirst(
                "<svg ", "<svg alt=\"" + words.replace("\"", "&quot;").replace("&", "&amp;") + "\" " + size);
    }

    private static String withoutMedia(String svg) {
        StringBuilder out = new StringBuilder(svg);
        for (int at = out.indexOf("@media"); at >= 0; at = out.indexOf("@media")) {
            int depth = 0, end = out.indexOf("{", at);
            do {
                if (out.charAt(end) == '{') depth++;
                if (out.charAt(end) == '}') depth--;
                end++;
            } while (depth > 0);
            out.delete(at, end);
        }
        return out.toString();
    }
}
