package galena.packet.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A drawing for paper. The printer draws lines only, so letters would end as outlines that nobody can select or search: words are
 * taken out of the drawing and set as text of the page, at the places, sizes and colours that the drawing gives them. The rules for
 * dark screens go, and the size is given in millimetres as the printed page wants it.
 *
 * @param svg without its words
 * @param width mm
 * @param height mm
 * @param labels its words
 * @param wide whether it wants the whole width of the page
 */
record PaperDrawing(String svg, double width, double height, List<Label> labels, boolean wide) {
    private static final double WIDEST = 176;
    private static final double TALLEST = 225;
    /** A drawing's unit at its largest, mm: text of 11 units is 2.9 mm then. */
    private static final double LARGEST_UNIT = 0.26;

    /** Charts are read at a smaller size than schematics, their captions beside them. */
    private static final double CHART_UNIT = 0.17;

    /** How far below the top of a line of the page's face its letters stand, a share of their size. */
    private static final double BASELINE = 0.8465;

    private static final Pattern TEXT = Pattern.compile(
            "<text class=\"([^\"]*)\" x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" text-anchor=\"(start|middle|end)\">([^<]*)</text>\\n?");

    /** Units of letters by what they are, as the drawings' own style sheets have them. */
    private static final Map<String, Double> CHART_SIZES = Map.of("title", 16.0, "number", 11.0);

    private static final Map<String, Double> SCHEMATIC_SIZES =
            Map.of("title", 16.0, "name", 12.0, "net", 10.0, "note", 10.0);

    private static final Map<String, String> COLOURS = Map.of(
            "line1", "#1d4b7c", "line2", "#a6431a", "line3", "#22694c", "line4", "#6b3f7d", "axis", "#55534c", "note",
            "#55534c", "number", "#55534c", "net", "#55534c");

    PaperDrawing {
        labels = List.copyOf(labels);
    }

    /**
     * A word at its place.
     *
     * @param text escaped as it stood in the drawing
     * @param x mm, of the anchor
     * @param top mm, of a line as high as its letters
     * @param size mm
     */
    record Label(String text, double x, double top, double size, String anchor, String colour) {
        /** As an element of the page; the line is wide enough for any word. */
        String html() {
            String align = anchor.equals("start") ? "left" : anchor.equals("end") ? "right" : "center";
            double left = anchor.equals("start") ? x : anchor.equals("end") ? x - WIDEST : x - WIDEST / 2;
            return String.format(
                    Locale.ROOT,
                    "<div class=\"label\" style=\"left:%.2fmm;top:%.2fmm;width:%.0fmm;font-size:%.2fmm;text-align:%s;color:%s\">%s</div>%n",
                    left,
                    top,
                    WIDEST,
                    size,
                    align,
                    colour,
                    text);
        }
    }

    static PaperDrawing of(String svg, String words) {
        String plain = withoutMedia(svg).replace("<rect class=\"paper\"", "<rect fill=\"#ffffff\"");
        String[] box = plain.replaceFirst("(?s).*?viewBox=\"([^\"]*)\".*", "$1").split(" ");
        boolean chart = svg.contains("class=\"galena\"");
        double width = Double.parseDouble(box[2]), height = Double.parseDouble(box[3]);
        double unit = Math.min(chart ? CHART_UNIT : LARGEST_UNIT, Math.min(WIDEST / width, TALLEST / height));
        String size = String.format(Locale.ROOT, "style=\"width:%.1fmm;height:%.1fmm\" ", width * unit, height * unit);
        String alt = words.replace("&", "&amp;").replace("\"", "&quot;").replace("<", "&lt;");
        String lines = TEXT.matcher(plain)
                .replaceAll("")
                .replaceFirst("<svg ", Matcher.quoteReplacement("<svg alt=\"" + alt + "\" " + size));
        return new PaperDrawing(lines, width * unit, height * unit, labels(plain, unit, chart), !chart);
    }

    private static List<Label> labels(String svg, double unit, boolean chart) {
        List<Label> labels = new ArrayList<>();
        Map<String, Double> sizes = chart ? CHART_SIZES : SCHEMATIC_SIZES;
        double usual = chart ? 12 : 11;
        Matcher found = TEXT.matcher(svg);
        while (found.find()) {
            List<String> kinds = List.of(found.group(1).split(" "));
            double size = kinds.stream()
                    .filter(sizes::containsKey)
                    .mapToDouble(sizes::get)
                    .findFirst()
                    .orElse(usual);
            String colour = kinds.stream()
                    .filter(COLOURS::containsKey)
                    .map(COLOURS::get)
                    .findFirst()
                    .orElse("#2b2b28");
            double x = Double.parseDouble(found.group(2)), y = Double.parseDouble(found.group(3));
            labels.add(new Label(
                    found.group(5), x * unit, (y - BASELINE * size) * unit, size * unit, found.group(4), colour));
        }
        return labels;
    }

    /** The drawing and its words as one block of the page. */
    String html() {
        StringBuilder out = new StringBuilder();
        out.append(String.format(
                Locale.ROOT, "<div class=\"drawing\" style=\"width:%.1fmm;height:%.1fmm\">%n", width, height));
        out.append(svg);
        labels.forEach(label -> out.append(label.html()));
        return out.append("</div>\n").toString();
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
