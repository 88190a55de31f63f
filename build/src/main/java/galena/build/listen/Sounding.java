package galena.build.listen;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.signal.modulation.EnvelopePeriod;
import galena.signal.receiver.DiodeDetector;
import galena.signal.receiver.Receiver;
import galena.signal.receiver.ReceiverSettings;
import galena.signal.receiver.TunedFilter;
import galena.signal.spectrum.PeriodicWaveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Finds what {@link Sound} says: responses by multiplying them, distortion by trying a tone. */
final class Sounding {
    private static final double LOW = 5;
    private static final double HIGH = 20e3;
    private static final int STEPS = 400;
    private static final double HALF_POWER = Math.sqrt(0.5);
    private static final double TONE = 1000;
    private static final double SETTLING = 1.2;
    private static final int HARMONICS = 10;
    /** What a figure tried with the reduced model may be off by where nothing else is known, a share. */
    private static final double GRAIN = 0.01;

    private static final double COUPLING = DiodeDetector.COUPLING;

    private final Look look;
    private final Reduction reduction;
    private final ReceiverSettings settings;
    private final TunedFilter filter;

    Sounding(Look look, Reduction reduction, ReceiverSettings settings) {
        this.look = look;
        this.reduction = reduction.withoutHum();
        this.settings = settings;
        filter = new TunedFilter(settings.circuits(), settings.bandwidth(), reduction.rate());
    }

    Sound sound() {
        OptionalDouble[] sent = edges(false), heard = edges(true);
        double tone = Agreement.fitting(TONE, reduction.rate());
        EnvelopePeriod envelope = new EnvelopePeriod(Agreement.envelope(reduction, tone, 1), 1);
        List<Figure> hum = new ArrayList<>();
        for (Reduction.Hum line : look.hum()) {
            String at = String.format(Locale.ROOT, "%.0f Hz", line.frequency());
            hum.add(known(line.depth(), Unit.FRACTION, "hum depth", at, "small-signal, full circuit"));
            hum.add(known(line.deviation(), Unit.HERTZ, "hum swing", at, "small-signal, full circuit"));
        }
        String tried = "reduced model, 1 kHz at the programme's level";
        return new Sound(
                edge(sent[0], "lower −3 dB point", "envelope sent"),
                edge(sent[1], "upper −3 dB point", "envelope sent"),
                edge(heard[0], "lower −3 dB point", "behind the set"),
                edge(heard[1], "upper −3 dB point", "behind the set"),
                known(envelope.negativePeak(), Unit.FRACTION, "negative peak", "envelope sent", tried),
                known(envelope.distortion(), Unit.FRACTION, "distortion", "envelope sent", tried),
                known(distortion(tone), Unit.FRACTION, "distortion", "behind the set", tried),
                known(look.swing(TONE), Unit.HERTZ, "swing", "1 kHz at the programme's level", "small-signal"),
                hum);
    }

    private static Figure known(double value, Unit unit, String quantity, String at, String basis) {
        double grain = GRAIN * Math.abs(value) + 1e-9;
        return new Figure.Known(value, unit, value - grain, value + grain, basis, quantity, at);
    }

    private static Figure edge(OptionalDouble at, String quantity, String where) {
        if (at.isEmpty())
            return new Figure.Missing(
                    quantity + ", " + where, "it lies beyond " + LOW + " Hz to " + HIGH / 1e3 + " kHz");
        return known(at.getAsDouble(), Unit.HERTZ, quantity, where, "small-signal");
    }

    /** Where the response has fallen by 3 dB below its value at 1 kHz, on either side: a raised treble shifts nothing. */
    private OptionalDouble[] edges(boolean behindSet) {
        double[] f = new double[STEPS + 1], a = new double[STEPS + 1];
        int middle = (int) Math.round(STEPS * Math.log(TONE / LOW) / Math.log(HIGH / LOW));
        for (int k = 0; k <= STEPS; k++) {
            f[k] = LOW * Math.pow(HIGH / LOW, k / (double) STEPS);
            a[k] = response(f[k], behindSet);
        }
        return new OptionalDouble[] {fallen(f, a, middle, -1), fallen(f, a, middle, 1)};
    }

    private static OptionalDouble fallen(double[] f, double[] a, int middle, int way) {
        double level = HALF_POWER * a[middle];
        for (int k = middle + way; k >= 0 && k <= STEPS; k += way) {
            if (a[k] > level) continue;
            double share = (a[k - way] - level) / (a[k - way] - a[k]);
            return OptionalDouble.of(f[k - way] * Math.pow(f[k] / f[k - way], share));
        }
        return OptionalDouble.empty();
    }

    /** Relative amplitude of the envelope for a small tone, both channels alike. */
    private double response(double frequency, boolean behindSet) {
        double[] drive = new double[2], turning = new double[2];
        for (int c = 0; c < reduction.toAmplitude().size(); c++) {
            add(drive, reduction.path().response(reduction.toAmplitude().get(c), frequency));
            add(turning, reduction.path().response(reduction.toFrequency().get(c), frequency));
        }
        StaticCurve curve = reduction.curve();
        double step = (curve.high() - curve.low()) / 4096;
        double slope = (curve.amplitude(step) - curve.amplitude(-step)) / (2 * step);
        double perVolt = (curve.frequency(step) - curve.frequency(-step)) / (2 * step);
        double[] d = {drive[0] * slope, drive[1] * slope};
        double[] in = times(d, reduction.tank().response(reduction.inPhase(), frequency));
        double[] off = times(d, reduction.tank().response(reduction.quadrature(), frequency));
        off[0] += reduction.phase() * d[0];
        off[1] += reduction.phase() * d[1];
        off[0] += turning[1] * perVolt / frequency; // phase −j Δf/f
        off[1] -= turning[0] * perVolt / frequency;
        if (!behindSet) return Math.hypot(in[0], in[1]);
        // E = 1 + U e^(jωt) + L* e^(−jωt), U = (in + j off)/2, L = (in − j off)/2
        double[] up = {0.5 * (in[0] - off[1]), 0.5 * (in[1] + off[0])};
        double[] low = {0.5 * (in[0] + off[1]), 0.5 * (in[1] - off[0])};
        double[] middle = filter.response(settings.mistuned());
        up = times(up, divided(filter.response(settings.mistuned() + frequency), middle));
        double[] below = divided(filter.response(settings.mistuned() - frequency), middle);
        low = times(low, new double[] {below[0], -below[1]});
        double audio = Math.hypot(up[0] + low[0], up[1] + low[1]);
        return audio * frequency / Math.hypot(frequency, COUPLING);
    }

    private static void add(double[] to, double[] z) {
        to[0] += z[0];
        to[1] += z[1];
    }

    private static double[] times(double[] a, double[] b) {
        return new double[] {a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]};
    }

    private static double[] divided(double[] a, double[] b) {
        double square = b[0] * b[0] + b[1] * b[1];
        return new double[] {(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square};
    }

    /** Of the audio behind the set, without noise. */
    private double distortion(double tone) {
        double rate = reduction.rate();
        int n = (int) Math.round(rate / 50), blocks = (int) (SETTLING * 50);
        ReducedModel model = new ReducedModel(reduction, n);
        Receiver set = new Receiver(settings, rate, n, 0, 0, DiodeDetector.UNHEARD);
        double[] in = new double[n], i = new double[n], q = new double[n], audio = new double[n];
        for (int k = 0; k < n; k++) in[k] = Math.sin(2 * Math.PI * tone * k / rate);
        for (int block = 0; block < blocks; block++) {
            model.process(in, in, n, i, q);
            set.process(i, q, n, audio);
        }
        PeriodicWaveform wave = PeriodicWaveform.of(Agreement.period(audio, tone / rate));
        return wave.amplitude(1) > 0 ? wave.totalDistortion(HARMONICS) : 1;
    }
}
