package galena.bench.plot;

import galena.bench.measure.Figure;
import galena.bench.measure.Pictures;
import galena.bench.measure.Report;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** The plots of a report; each is empty when the capture holds nothing of its kind. */
public final class Plots {
    private static final double LOWEST_LEVEL = -110;

    private Plots() {}

    /** The waveform as strokes from lowest to highest, with the measured envelope on both sides. */
    public static Optional<String> waveform(Report report) {
        Pictures p = report.pictures();
        if (p.waveTimes().size() < 2 && p.envelopeTimes().size() < 2) return Optional.empty();
        List<Double> times = milli(p.waveTimes()), envelopeTimes = milli(p.envelopeTimes());
        List<Double> mirrored = negative(p.envelope());
        Axis x = Axis.around(least(times, envelopeTimes), most(times, envelopeTimes), Sheet.LEFT, Sheet.RIGHT);
        Axis y = Axis.around(least(p.waveLow(), mirrored), most(p.waveHigh(), p.envelope()), Sheet.BOTTOM, Sheet.TOP);
        Sheet sheet = new Sheet(report.name() + ": waveform and envelope", report.verdict());
        sheet.axes(x, "ms", y, p.unit());
        sheet.strokes(x, times, y, p.waveLow(), p.waveHigh(), Sheet.PENCIL);
        sheet.curve(x, envelopeTimes, y, p.envelope(), Sheet.SECOND_INK, 1.4);
        sheet.curve(x, envelopeTimes, y, mirrored, Sheet.SECOND_INK, 1.4);
        sheet.note(line(report, "depth.positive") + line(report, "depth.negative"));
        return Optional.of(sheet.finished());
    }

    /** The spectrum in dBc with the noise floor of the same transform. */
    public static Optional<String> spectrum(Report report) {
        Pictures p = report.pictures();
        if (p.frequencies().size() < 2) return Optional.empty();
        List<Double> kilohertz = p.frequencies().stream().map(f -> f / 1e3).toList();
        List<Double> levels =
                p.levels().stream().map(l -> Math.max(LOWEST_LEVEL, l)).toList();
        Axis x = Axis.around(least(kilohertz), most(kilohertz), Sheet.LEFT, Sheet.RIGHT);
        Axis y = new Axis(LOWEST_LEVEL, 5, Sheet.BOTTOM, Sheet.TOP);
        Sheet sheet = new Sheet(report.name() + ": spectrum", report.verdict());
        sheet.axes(x, "kHz", y, "dBc");
        sheet.curve(x, kilohertz, y, levels, Sheet.INK, 0.9);
        if (p.floor() > LOWEST_LEVEL) sheet.level(y, p.floor(), "mean noise of this transform", Sheet.SECOND_INK);
        sheet.note(line(report, "carrier.frequency"));
        return Optional.of(sheet.finished());
    }

    /** Envelope against audio, with the fitted curve. */
    public static Optional<String> trapezoid(Report report) {
        Pictures p = report.pictures();
        if (p.trapezoid().size() < 4) return Optional.empty();
        List<Double> audio = every(p.trapezoid(), 0), envelope = every(p.trapezoid(), 1);
        List<Double> curveX = every(p.trapezoidCurve(), 0), curveY = every(p.trapezoidCurve(), 1);
        Axis x = Axis.around(least(audio, curveX), most(audio, curveX), Sheet.LEFT, Sheet.RIGHT);
        double tallest = most(envelope, curveY);
        Axis y = Axis.around(Math.min(-tallest, least(envelope, curveY)), tallest, Sheet.BOTTOM, Sheet.TOP);
        Sheet sheet = new Sheet(report.name() + ": envelope against audio", report.verdict());
        sheet.axes(x, "audio", y, p.unit());
        sheet.dots(x, y, p.trapezoid(), 1, Sheet.PENCIL);
        sheet.dots(x, y, p.trapezoid(), -1, Sheet.PENCIL);
        sheet.curve(x, curveX, y, curveY, Sheet.SECOND_INK, 1.4);
        sheet.curve(x, curveX, y, negative(curveY), Sheet.SECOND_INK, 1.4);
        sheet.note(line(report, "depth.trapezoid"));
        return Optional.of(sheet.finished());
    }

    private static String line(Report report, String key) {
        return report.figure(key).map(Plots::words).orElse("");
    }

    private static String words(Figure figure) {
        return figure.label() + " " + figure.words() + "  ";
    }

    private static List<Double> negative(List<Double> values) {
        return values.stream().map(v -> -v).toList();
    }

    private static List<Double> milli(List<Double> seconds) {
        return seconds.stream().map(t -> 1e3 * t).toList();
    }

    private static List<Double> every(List<Double> pairs, int from) {
        List<Double> out = new ArrayList<>();
        for (int k = from; k < pairs.size(); k += 2) out.add(pairs.get(k));
        return out;
    }

    @SafeVarargs
    private static double least(List<Double>... lists) {
        double least = Double.POSITIVE_INFINITY;
        for (List<Double> list : lists) if (!list.isEmpty()) least = Math.min(least, Collections.min(list));
        return least;
    }

    @SafeVarargs
    private static double most(List<Double>... lists) {
        double most = Double.NEGATIVE_INFINITY;
        for (List<Double> list : lists) if (!list.isEmpty()) most = Math.max(most, Collections.max(list));
        return most;
    }
}
