package galena.build.preferred;

import galena.build.folder.Drawer;
import galena.trade.preferred.ColourCode;
import galena.trade.preferred.MarkingException;
import galena.trade.preferred.Series;
import galena.trade.preferred.TwoParts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What comes near a value.
 *
 * @param component kind of part
 * @param wanted value (SI)
 * @param rows nearest preferred value of each series
 * @param made of one or two parts of the drawer, nearest first; empty where none was looked into or it has none of the kind
 */
public record ValueSheet(Component component, double wanted, List<Row> rows, List<TwoParts.Combination> made) {
    private static final List<Series> SHOWN = List.of(Series.E6, Series.E12, Series.E24, Series.E96);

    /** A value that stands in a drawer is taken to be there more than once. */
    private static final int SEVERAL = 2;

    /** Farther off than this share only the nearest of all is named. */
    private static final double WORTH_NAMING = 0.1;

    public ValueSheet {
        rows = List.copyOf(rows);
        made = List.copyOf(made);
    }

    /**
     * @param series name
     * @param tolerance that parts of the series customarily have, as a ratio
     * @param value nearest (SI)
     * @param error value over wanted, less one
     * @param below next lower value of the series, or the same
     * @param above next higher value, or the same
     * @param codes how such a part is marked
     */
    public record Row(
            String series, double tolerance, double value, double error, double below, double above, List<Code> codes) {
        public Row {
            codes = List.copyOf(codes);
        }
    }

    /**
     * A marking.
     *
     * @param how "letters", "digits" or "bands"
     * @param text as it stands on the part
     */
    public record Code(String how, String text) {}

    /**
     * @param drawer to look into, if one
     * @param most combinations
     */
    public static ValueSheet of(Component.Asked asked, Optional<Drawer> drawer, int most) {
        double wanted = asked.value().value();
        List<Row> rows =
                SHOWN.stream().map(s -> row(asked.component(), s, wanted)).toList();
        List<TwoParts.Combination> made =
                drawer.map(d -> made(asked.component(), wanted, d, most)).orElse(List.of());
        return new ValueSheet(asked.component(), wanted, rows, made);
    }

    private static Row row(Component component, Series series, double wanted) {
        double value = series.nearest(wanted);
        return new Row(
                series.name(),
                series.customaryTolerance(),
                value,
                value / wanted - 1,
                series.atMost(wanted),
                series.atLeast(wanted),
                codes(component, value, series.customaryTolerance()));
    }

    /** Every code that reaches the value; one that doesn't is left out. */
    private static List<Code> codes(Component component, double value, double tolerance) {
        List<Code> codes = new ArrayList<>();
        add(codes, "letters", () -> component.letters().write(value));
        component
                .digits()
                .ifPresent(digits -> add(codes, "digits", () -> {
                    try {
                        return digits.write(value, 2);
                    } catch (MarkingException threeFigures) {
                        return digits.write(value, 3);
                    }
                }));
        if (component == Component.RESISTOR)
            add(codes, "bands", () -> String.join(" ", ColourCode.write(value, tolerance)));
        return codes;
    }

    private interface Writing {
        String write();
    }

    private static void add(List<Code> codes, String how, Writing writing) {
        try {
            codes.add(new Code(how, writing.write()));
        } catch (MarkingException outOfItsReach) {
            return; // a tiny or huge value has no such marking
        }
    }

    private static List<TwoParts.Combination> made(Component component, double wanted, Drawer drawer, int most) {
        TreeMap<Double, TwoParts.Stock> stock = new TreeMap<>();
        for (double value : component.in(drawer))
            stock.put(value, new TwoParts.Stock(value, component.usualTolerance(), SEVERAL));
        List<TwoParts.Combination> all = TwoParts.nearest(wanted, component.pairs(), List.copyOf(stock.values()), most);
        List<TwoParts.Combination> near =
                all.stream().filter(c -> Math.abs(c.error()) <= WORTH_NAMING).toList();
        return near.isEmpty() ? all.subList(0, Math.min(1, all.size())) : near;
    }
}
