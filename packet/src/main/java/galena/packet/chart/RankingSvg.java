package galena.packet.chart;

import java.util.Locale;

/** Draws a ranking as SVG 1.1 text in the manner of {@link ChartSvg}: a name, a bar, a number to each line. Stateless. */
public final class RankingSvg {
    private static final double WIDTH = 720;
    private static final double TOP = 70;
    private static final double LINE = 22;
    private static final double BAR = 12;
    private static final double LETTER = 6.6;
    private static final double MOST_NAME = 300;
    private static final double NUMBER = 78;

    private final Ranking ranking;
    private final StringBuilder out = new StringBuilder();

    private RankingSvg(Ranking ranking) {
        this.ranking = ranking;
    }

    /** The whole document. */
    public static String draw(Ranking ranking) {
        return new RankingSvg(ranking).draw();
    }

    private String draw() {
        double height = TOP + LINE * ranking.bars().size() + 24;
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" class=\"galena\">",
                WIDTH, height);
        add("<title>%s</title>", ChartSvg.escaped(ranking.title()));
        add("<desc>%s</desc>", ChartSvg.escaped(ranking.measure()));
        out.append(ChartStyle.SHEET);
        add("<rect class=\"paper\" width=\"%.0f\" height=\"%.0f\"/>", WIDTH, height);
        text("title", 20, 26, "start", ranking.title());
        add("<path class=\"rule\" d=\"M20.0 36.5H%.1f\"/>", WIDTH - 20);
        text("axis", WIDTH - 20, 56, "end", ranking.measure());
        int longest =
                ranking.bars().stream().mapToInt(b -> b.name().length()).max().orElse(0);
        double left = 20 + Math.min(MOST_NAME, LETTER * longest) + 12, right = WIDTH - 20 - NUMBER;
        double middle = (left + right) / 2, half = (right - left) / 2;
        double foot = TOP + LINE * ranking.bars().size();
        add("<g class=\"line line1\">");
        for (int k = 0; k < ranking.bars().size(); k++) {
            double length = half * ranking.bars().get(k).value() / ranking.longest();
            add(
                    "<path class=\"ink\" d=\"M%1$.1f %2$.1fH%3$.1fV%4$.1fH%1$.1f\"/>",
                    middle, TOP + LINE * k + (LINE - BAR) / 2, middle + length, TOP + LINE * k + (LINE + BAR) / 2);
            add(
                    "<path class=\"interval\" d=\"M%1$.1f %2$.1fH%3$.1fV%4$.1fH%1$.1fZ\"/>",
                    middle, TOP + LINE * k + (LINE - BAR) / 2, middle + length, TOP + LINE * k + (LINE + BAR) / 2);
        }
        add("</g>");
        add("<path class=\"edge\" d=\"M%.1f %.1fV%.1f\"/>", middle, TOP, foot);
        for (int k = 0; k < ranking.bars().size(); k++) {
            Ranking.Bar bar = ranking.bars().get(k);
            double base = TOP + LINE * (k + 0.5) + 4;
            text("name", left - 12, base, "end", bar.name());
            text("number", WIDTH - 20, base, "end", ranking.number(bar));
        }
        out.append("</svg>\n");
        return out.toString();
    }

    private void text(String kind, double px, double py, String anchor, String words) {
        add(
                "<text class=\"%s\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>",
                kind, px, py, anchor, ChartSvg.escaped(words));
    }

    private void add(String form, Object... values) {
        out.append(String.format(Locale.ROOT, form, values)).append('\n');
    }
}
