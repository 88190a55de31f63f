package galena.bench.log;

import galena.bench.measure.Figure;
import galena.bench.measure.Reading;
import galena.bench.measure.Report;
import galena.build.folder.Circumstances;
import galena.build.folder.Layout;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.Place;
import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Turns a report into lines of the bench log. */
public final class Filing {
    private static final double PER_CENT = 0.01;
    private static final Map<What, String> FIGURES = figures();

    private Filing() {}

    private static Map<What, String> figures() {
        Map<What, String> figures = new EnumMap<>(What.class);
        figures.put(What.CARRIER, "carrier.frequency");
        figures.put(What.AMPLITUDE, "carrier.amplitude");
        figures.put(What.POSITIVE_PEAK, "depth.positive");
        figures.put(What.NEGATIVE_PEAK, "depth.negative");
        figures.put(What.SECOND_HARMONIC, "harmonic.2");
        figures.put(What.THIRD_HARMONIC, "harmonic.3");
        figures.put(What.DISTORTION, "distortion");
        figures.put(What.SWING, "swing");
        return figures;
    }

    /**
     * The readings in a report, each with its uncertainty; figures that are limits or missing are left out, and amplitudes that
     * are not in volts.
     *
     * @param at test point
     * @param when ISO 8601
     * @param circumstances as noted; the capture's name is added
     */
    public static List<LogEntry> entries(Report report, Optional<String> at, String when, Circumstances circumstances) {
        List<LogEntry> entries = new ArrayList<>();
        FIGURES.forEach((what, key) -> report.figure(key)
                .filter(f -> f.reading() instanceof Reading.Known && isIn(f, what.unit()))
                .ifPresent(f -> entries.add(entry(what, f, at, when, circumstances.of(report.name())))));
        return entries;
    }

    /** Those that the log does not hold already: the same figure of the same capture. */
    public static List<LogEntry> fresh(List<LogEntry> entries, List<LogEntry> log) {
        return entries.stream()
                .filter(e -> log.stream().noneMatch(old -> same(e, old)))
                .toList();
    }

    private static boolean same(LogEntry one, LogEntry other) {
        return one.what() == other.what()
                && one.value().equals(other.value())
                && one.at().equals(other.at())
                && one.circumstances().capture().equals(other.circumstances().capture());
    }

    private static boolean isIn(Figure figure, Unit unit) {
        return switch (unit) {
            case HERTZ -> figure.unit().equals("Hz");
            case VOLT -> figure.unit().equals("V");
            case FRACTION -> figure.unit().equals("%");
            case DECIBEL -> figure.unit().startsWith("dB");
            default -> false;
        };
    }

    private static LogEntry entry(
            What what, Figure figure, Optional<String> at, String when, Circumstances circumstances) {
        Estimate estimate = ((Reading.Known) figure.reading()).estimate();
        if (what.unit() == Unit.FRACTION) estimate = estimate.map(percent -> percent * PER_CENT);
        // the wider side: a log has one number for both
        double half = Math.max(estimate.high() - estimate.value(), estimate.value() - estimate.low());
        return new LogEntry(
                what,
                rounded(estimate, half, what.unit()),
                half > 0
                        ? Optional.of(read(Engineering.print(half, what.unit(), 2), what.unit()))
                        : Optional.<Quantity>empty(),
                at,
                Optional.of(when),
                Optional.of(figure.quantity() + ": " + figure.how()),
                circumstances,
                new Place(Layout.LOG.place(), 1, 1));
    }

    private static Quantity rounded(Estimate estimate, double half, Unit unit) {
        String text = Engineering.within(estimate.value(), estimate.value() - half, estimate.value() + half, unit);
        return read(text, unit);
    }

    private static Quantity read(String printed, Unit unit) {
        try {
            return Quantity.read(printed, unit);
        } catch (BadQuantity ours) {
            throw new IllegalStateException("printed what cannot be read: " + printed, ours);
        }
    }
}
