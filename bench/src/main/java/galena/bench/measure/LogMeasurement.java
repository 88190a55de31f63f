package galena.bench.measure;

import galena.bench.capture.FrequencyLog;
import galena.signal.Estimate;
import galena.signal.drift.StraightLine;
import galena.signal.drift.WarmUp;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Drift, warm-up, pushing and pulling from a log. */
final class LogMeasurement {
    private LogMeasurement() {}

    static void into(Sheet sheet, FrequencyLog log, Expected expected) {
        double[] t = array(log.seconds()), f = array(log.hertz());
        double last = f[f.length - 1];
        double clock = expected.instrument().clockPpm() * 1e-6 * Math.abs(last);
        sheet.add(
                "carrier.frequency",
                "carrier, last reading",
                new Estimate(last, last - clock, last + clock),
                "Hz",
                "the counter's clock is the interval");
        drift(sheet, t, f);
        WarmUp.fit(t, f)
                .ifPresentOrElse(
                        w -> warmUp(sheet, w),
                        () -> sheet.miss(
                                "warmup.constant",
                                "warm-up constant",
                                "s",
                                "the log shows no bend that one time constant explains"));
        for (Map.Entry<String, List<Double>> other : log.others().entrySet())
            against(sheet, other.getKey(), array(other.getValue()), f);
    }

    private static void drift(Sheet sheet, double[] t, double[] f) {
        Optional<StraightLine> line = StraightLine.through(t, f);
        if (line.isEmpty()) {
            sheet.miss("drift", "mean drift", "Hz/h", "all readings bear the same time");
            return;
        }
        sheet.add(
                "drift",
                "mean drift",
                line.get().slope().map(x -> 3600 * x),
                "Hz/h",
                "straight line through all readings, widened for their correlation");
        sheet.add(
                "scatter",
                "scatter about the line, rms",
                new Estimate(line.get().rms(), line.get().rms(), line.get().rms()),
                "Hz",
                "what the line leaves over");
    }

    private static void warmUp(Sheet sheet, WarmUp w) {
        sheet.add("warmup.constant", "warm-up constant", w.constant(), "s", "one exponential and a straight line");
        sheet.add(
                "warmup.excess",
                "warm-up, from switching on",
                w.excess(),
                "Hz",
                "how far the first reading lies above the settled course");
        sheet.add("warmup.rate", "drift after warm-up", w.rate().map(x -> 3600 * x), "Hz/h", "the straight part");
    }

    /** Frequency against a column that moved: volts, picofarads or degrees by its name. */
    private static void against(Sheet sheet, String name, double[] x, double[] f) {
        String text = name.toLowerCase(Locale.ROOT);
        String unit = text.matches(".*(\\bv\\b|volt|supply|battery).*")
                ? "V"
                : text.matches(".*(pf|capacit).*") ? "pF" : text.matches(".*(temp|°c|deg).*") ? "°C" : "unit";
        String key =
                switch (unit) {
                    case "V" -> "push";
                    case "pF" -> "pull";
                    case "°C" -> "temperature";
                    default -> "against." + text.replaceAll("[^a-z0-9]", "");
                };
        StraightLine.through(x, f)
                .ifPresentOrElse(
                        line -> sheet.add(
                                key,
                                "frequency against " + name,
                                line.slope(),
                                "Hz/" + unit,
                                String.format(
                                        Locale.ROOT,
                                        "straight line about %.4g; whatever else moved with it is in it",
                                        line.meanX())),
                        () -> sheet.miss(key, "frequency against " + name, "Hz/" + unit, "the column does not move"));
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(d -> d).toArray();
    }
}
