package galena.packet.chart;

/** Draws a ranking for a terminal: a name, a bar to the left or right of a middle line, a number. Stateless. */
public final class RankingText {
    private static final int LEAST_BARS = 12;

    private RankingText() {}

    /**
     * @param columns width of the whole, characters
     * @param boxes whether block and box signs can be shown; plain ASCII otherwise
     */
    public static String draw(Ranking ranking, int columns, boolean boxes) {
        int names =
                ranking.bars().stream().mapToInt(b -> b.name().length()).max().orElse(0);
        int numbers = ranking.bars().stream()
                .mapToInt(b -> ranking.number(b).length())
                .max()
                .orElse(0);
        int half = Math.max(LEAST_BARS, columns - names - numbers - 5) / 2;
        StringBuilder out = new StringBuilder();
        for (Ranking.Bar bar : ranking.bars()) {
            int length = (int) Math.round(half * Math.abs(bar.value()) / ranking.longest());
            String ink = (boxes ? "▬" : "=").repeat(length);
            boolean left = bar.value() < 0;
            out.append(pad(bar.name(), names))
                    .append("  ")
                    .append(" ".repeat(half - (left ? length : 0)))
                    .append(left ? ink : "")
                    .append(boxes ? "│" : "|")
                    .append(left ? "" : ink)
                    .append(" ".repeat(half - (left ? 0 : length)))
                    .append(' ')
                    .append(" ".repeat(numbers - ranking.number(bar).length()))
                    .append(boxes ? ranking.number(bar) : ranking.number(bar).replace('−', '-'))
                    .append('\n');
        }
        String measure = ranking.measure();
        return out + " ".repeat(Math.max(0, names + 2 * half + numbers + 4 - measure.length())) + measure + "\n";
    }

    private static String pad(String name, int width) {
        return name + " ".repeat(width - name.length());
    }
}
