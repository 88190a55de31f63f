package galena.desk.page;

import galena.bench.capture.Capture;
import galena.bench.capture.Channel;
import galena.bench.capture.Waveforms;
import galena.bench.log.Beside;
import galena.bench.log.Filing;
import galena.bench.measure.Reading;
import galena.bench.measure.Report;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.PredictedReadings;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.desk.writing.Json;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * A capture over the prediction of the place where it was taken: its samples folded onto two periods, shifted so that both fundamentals
 * stand at one phase; and each of its readings with its uncertainty over the interval that is predicted.
 */
final class CaptureBeside {
    private static final int PERIODS = 2;
    private static final int MOST_SAMPLES = 400;
    private static final int WINDOWS = 200;
    private static final int DRAWN = 240;
    private static final int HARMONICS = 5;
    private static final int TURNS = 256;

    private final TestPoint point;
    private final Report report;
    private final Running running;
    private final Map<What, Figure.Known> predicted;

    private CaptureBeside(TestPoint point, Report report, Running running, Map<What, Figure.Known> predicted) {
        this.point = point;
        this.report = report;
        this.running = running;
        this.predicted = predicted;
    }

    /** @param audio peak level of the tone at the source, V, if it is known @param whole the prediction whose curve is used */
    static String of(
            BuildFolder folder,
            Overlay overlay,
            TestPoint point,
            Capture capture,
            Report report,
            OptionalDouble audio,
            Optional<Prediction> whole)
            throws BadInputException, NoOperatingPoint {
        try {
            Optional<TestPoint> here = Optional.of(point);
            Running running = PredictedReadings.running(folder.build(), overlay, here, Progress.SILENT);
            Map<What, Figure.Known> figures = PredictedReadings.at(folder, overlay, here, Progress.SILENT);
            Optional<Prediction.Curve> curve = audio.isEmpty()
                    ? Optional.empty()
                    : whole.map(Prediction::modulation)
                            .filter(Prediction.Curve.class::isInstance)
                            .map(m -> at((Prediction.Curve) m, audio.getAsDouble()));
            curve.ifPresent(c -> figures.putAll(PredictedReadings.modulated(c, c.level())));
            return new CaptureBeside(point, report, running, figures).told(capture, curve);
        } catch (Running.NotRunning silent) {
            throw Typed.bad(
                    point.name(),
                    "nothing is predicted there: " + silent.getMessage(),
                    "A capture is laid over a carrier.",
                    Optional.empty());
        }
    }

    /** The same curve at another level of the tone, V. */
    private static Prediction.Curve at(Prediction.Curve c, double level) {
        return new Prediction.Curve(
                c.quantity(),
                c.source(),
                c.curve(),
                level,
                c.positivePeak(),
                c.negativePeak(),
                c.distortion(),
                c.carrierShift(),
                c.swing(),
                c.deepestClean(),
                c.cleanLimit(),
                c.limits(),
                c.tone(),
                c.response());
    }

    private String told(Capture capture, Optional<Prediction.Curve> curve) {
        DoubleUnaryOperator voltage = PredictedReadings.voltage(running, point);
        double frequency = PredictedReadings.carrier(running);
        return Json.line("beside", json -> {
            json.text("capture", report.name()).text("point", point.name());
            json.text("probe", point.probe().map(p -> p.name()).orElse(""));
            double period = 1 / frequency;
            json.number("span", PERIODS * period);
            List<Double> drawn = new ArrayList<>();
            for (int k = 0; k <= DRAWN; k++) drawn.add(voltage.applyAsDouble(PERIODS * period * k / DRAWN));
            json.numbers("predicted", drawn);
            Optional<Folded> folded = folded(capture, voltage, frequency);
            json.text("without", folded.isPresent() ? "" : "its samples show no waveform at a probe in volts");
            json.numbers("times", folded.map(Folded::times).orElse(List.of()));
            json.numbers("samples", folded.map(Folded::values).orElse(List.of()));
            harmonics(json, voltage, period);
            envelope(json, curve);
            Strip.write(json, strips());
        });
    }

    /** Samples of the capture on the predicted time scale: s from the start, and V without their mean. */
    private record Folded(List<Double> times, List<Double> values) {}

    private Optional<Folded> folded(Capture capture, DoubleUnaryOperator voltage, double predictedFrequency) {
        OptionalDouble measured = known("carrier.frequency"), amplitude = known("carrier.amplitude");
        if (!(capture.content() instanceof Waveforms waves)
                || waves.pairs()
                || measured.isEmpty()
                || amplitude.isEmpty()) return Optional.empty();
        Optional<Channel> channel = waves.channels().stream()
                .filter(c -> c.unit().equals("V") && c.samples().length > 2)
                .max(Comparator.comparingDouble(c -> fundamental(
                        c.samples(), 0, Math.min(c.samples().length, TURNS), waves.interval(), measured.getAsDouble())[
                        0]));
        if (channel.isEmpty()) return Optional.empty();
        double[] v = channel.get().samples();
        double perPeriod = 1 / (measured.getAsDouble() * waves.interval());
        boolean modulated = known("depth.negative").isPresent();
        int count = (int) Math.min(
                v.length, Math.min(MOST_SAMPLES, Math.ceil((modulated ? PERIODS + 1 : MOST_SAMPLES) * perPeriod)));
        int from = modulated ? nearest(v, count, waves.interval(), measured.getAsDouble(), amplitude.getAsDouble()) : 0;
        double[] mine = fundamental(v, from, count, waves.interval(), measured.getAsDouble());
        double theirs = phase(voltage, 1 / predictedFrequency);
        double mean = 0;
        for (int k = 0; k < count; k++) mean += v[from + k] / count;
        List<Double> times = new ArrayList<>(), values = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            double turns = k * waves.interval() * measured.getAsDouble() + (mine[1] - theirs) / (2 * Math.PI);
            double place = turns - PERIODS * Math.floor(turns / PERIODS);
            times.add(place / predictedFrequency);
            values.add(v[from + k] - mean);
        }
        return Optional.of(new Folded(times, values));
    }

    /** Where a modulated carrier is as tall as without audio. */
    private static int nearest(double[] v, int count, double interval, double frequency, double amplitude) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int w = 0; w < WINDOWS; w++) {
            int from = (int) ((long) (v.length - count) * w / WINDOWS);
            double off = Math.abs(fundamental(v, from, count, interval, frequency)[0] - amplitude);
            if (off >= least) continue;
            least = off;
            best = from;
        }
        return best;
    }

    /** Amplitude and phase (rad, of a cosine, at the first sample) of the fundamental, by least squares on the samples. */
    private static double[] fundamental(double[] v, int from, int count, double interval, double frequency) {
        double mean = 0;
        for (int k = 0; k < count; k++) mean += v[from + k] / count;
        double cc = 0, cs = 0, ss = 0, vc = 0, vs = 0;
        for (int k = 0; k < count; k++) {
            double angle = 2 * Math.PI * frequency * interval * k, c = Math.cos(angle), s = Math.sin(angle);
            cc += c * c;
            cs += c * s;
            ss += s * s;
            vc += (v[from + k] - mean) * c;
            vs += (v[from + k] - mean) * s;
        }
        double d = cc * ss - cs * cs;
        if (!(Math.abs(d) > 1e-12)) return new double[] {0, 0};
        double a = (vc * ss - vs * cs) / d, b = (vs * cc - vc * cs) / d;
        return new double[] {Math.hypot(a, b), Math.atan2(-b, a)};
    }

    private static double phase(DoubleUnaryOperator voltage, double period) {
        double[] v = new double[TURNS];
        for (int k = 0; k < TURNS; k++) v[k] = voltage.applyAsDouble(period * k / TURNS);
        return fundamental(v, 0, TURNS, period / TURNS, 1 / period)[1];
    }

    private static double amplitude(DoubleUnaryOperator voltage, double period, int h) {
        double a = 0, b = 0;
        for (int k = 0; k < TURNS; k++) {
            double v = voltage.applyAsDouble(period * k / TURNS), angle = 2 * Math.PI * h * k / TURNS;
            a += v * Math.cos(angle);
            b += v * Math.sin(angle);
        }
        return Math.hypot(a, b);
    }

    /** Levels against the carrier, dB: measured with its interval or limit, predicted with its interval where it has one. */
    private void harmonics(Json json, DoubleUnaryOperator voltage, double period) {
        double first = amplitude(voltage, period, 1);
        List<Integer> numbers = new ArrayList<>();
        for (int h = 2; h <= HARMONICS; h++) numbers.add(h);
        json.each("harmonics", numbers, h -> {
            json.number("number", (double) h);
            json.number("typical", 20 * Math.log10(Math.max(amplitude(voltage, period, h), 1e-9 * first) / first));
            Figure.Known wide =
                    h == 2 ? predicted.get(What.SECOND_HARMONIC) : h == 3 ? predicted.get(What.THIRD_HARMONIC) : null;
            if (wide != null) json.number("low", wide.low()).number("high", wide.high());
            report.figure("harmonic." + h).ifPresent(f -> {
                json.text("words", f.words().replace('-', '−'));
                if (f.reading() instanceof Reading.Known k)
                    json.number("measured", k.estimate().value())
                            .number("measuredLow", k.estimate().low())
                            .number("measuredHigh", k.estimate().high());
                if (f.reading() instanceof Reading.Below below) json.number("below", below.limit());
            });
        });
    }

    /** Measured and predicted envelope, each against its own mean, with their fundamentals at one phase. */
    private void envelope(Json json, Optional<Prediction.Curve> curve) {
        List<Double> times = report.pictures().envelopeTimes(),
                measured = report.pictures().envelope();
        OptionalDouble tone = known("tone.frequency");
        List<Double> predicted = curve.map(c -> c.envelope(TURNS)).orElse(List.of());
        if (tone.isEmpty() || times.size() < 8) return;
        json.object("envelope", () -> {
            json.text("quantity", curve.map(Prediction.Curve::quantity).orElse(""));
            json.number("tone", tone.getAsDouble()).numbers("times", times).numbers("measured", overMean(measured));
            if (predicted.isEmpty()) {
                json.text(
                                "without",
                                curve.isPresent()
                                        ? "the audio level lies beyond the curve"
                                        : "the audio level is not known, or the curve is being computed")
                        .numbers("predicted", List.of());
                return;
            }
            double[] m = array(measured), p = array(predicted);
            double interval = times.get(1) - times.get(0);
            double ahead = fundamental(m, 0, m.length, interval, tone.getAsDouble())[1]
                    - fundamental(p, 0, p.length, 1.0 / TURNS, 1)[1];
            List<Double> even = overMean(predicted), there = new ArrayList<>();
            for (int k = 0; k < m.length; k++) {
                double turns = k * interval * tone.getAsDouble() + ahead / (2 * Math.PI);
                there.add(even.get((int) Math.floor((turns - Math.floor(turns)) * TURNS) % TURNS));
            }
            json.text("without", "").numbers("predicted", there);
        });
    }

    private static List<Double> overMean(List<Double> values) {
        double mean = values.stream().mapToDouble(v -> v).average().orElse(1);
        return values.stream().map(v -> v / mean).toList();
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(v -> v).toArray();
    }

    private List<Strip> strips() {
        List<Strip> strips = new ArrayList<>();
        for (LogEntry entry : Filing.entries(report, Optional.of(point.name()), "", Circumstances.UNKNOWN)) {
            Figure.Known figure = predicted.get(entry.what());
            Figure found = figure != null
                    ? figure
                    : new Figure.Missing(entry.what().inWords(), "the audio level is not known, or beyond the curve");
            strips.add(new Strip(entry, found, new Beside(entry, found).agrees()));
        }
        return strips;
    }

    private OptionalDouble known(String key) {
        return report.figure(key)
                .filter(f -> f.reading() instanceof Reading.Known)
                .map(f -> OptionalDouble.of(
                        ((Reading.Known) f.reading()).estimate().value()))
                .orElse(OptionalDouble.empty());
    }
}
