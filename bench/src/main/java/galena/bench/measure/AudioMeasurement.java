package galena.bench.measure;

import galena.bench.capture.Waveforms;
import galena.signal.carrier.CarrierFinder;
import galena.signal.carrier.Samples;
import galena.signal.fit.RiceInterval;
import galena.signal.fit.SeriesFit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Audio that a receiver has detected: its distortion and hum can be told, the depth it came from cannot. */
final class AudioMeasurement {
    private static final int LONGEST = 1 << 19;
    private static final int HARMONICS = 10;
    private static final String WHY =
            "a detector removes the carrier that depth is a share of, and its gain control hides what is left: record IQ, or the tank with a scope";

    private AudioMeasurement() {}

    static void into(Sheet sheet, Waveforms waves, Expected expected) {
        sheet.find(
                Finding.Kind.DETECTED_AUDIO,
                "This is audio that a receiver has detected: the depth cannot be had, since " + WHY);
        sheet.miss("depth.positive", "positive peak", "%", WHY);
        sheet.miss("depth.negative", "negative peak", "%", WHY);
        double[] all = waves.channels().get(0).samples();
        double[] y = Arrays.copyOf(all, Math.min(all.length, LONGEST));
        double top = 0.45 / waves.interval();
        Optional<CarrierFinder.Line> line = CarrierFinder.strongest(Samples.real(y, waves.interval()), 20, top);
        if (line.isEmpty()) {
            sheet.miss("tone.frequency", "tone", "Hz", "no line stands out of the noise");
            return;
        }
        double f = line.get().frequency(), mains = expected.mains().orElse(50);
        int harmonics = (int) Math.max(1, Math.min(HARMONICS, top / f));
        List<Double> hum = new ArrayList<>();
        for (int k = 1; k <= 6; k++) {
            double nearest = Math.max(1, Math.rint(k * mains / f)) * f;
            if (Math.abs(k * mains - nearest) * y.length * waves.interval() > 2) hum.add(k * mains);
        }
        SeriesFit.Model model = new SeriesFit.Model(f, true, harmonics, hum, 1);
        Optional<SeriesFit> fit = SeriesFit.of(y, null, waves.interval(), top, model);
        if (fit.isEmpty()) {
            sheet.miss("tone.frequency", "tone", "Hz", "the strongest line is not steady");
            return;
        }
        report(sheet, fit.get(), hum);
    }

    private static void report(Sheet sheet, SeriesFit fit, List<Double> hum) {
        double first = Math.hypot(fit.cosine(1), fit.sine(1));
        sheet.addOf(
                "audio",
                "tone.frequency",
                "tone",
                fit.frequency(),
                "Hz",
                "fitted with its harmonics; the clock's error is not in it");
        for (int k = 2; k <= fit.harmonics(); k++) {
            sheet.addShare(
                    "audio.distortion." + k,
                    "audio harmonic " + k,
                    RiceInterval.of(Math.hypot(fit.cosine(k), fit.sine(k)), fit.sigmaOfHarmonic(k))
                            .map(a -> a / first),
                    "over the fundamental, the receiver's own distortion included");
        }
        for (int l = 0; l < hum.size(); l++) {
            String f = String.format(Locale.ROOT, "%.0f", hum.get(l));
            sheet.addRatio(
                    "audio.hum." + f, "hum at " + f + " Hz", fit.line(l).map(a -> a / first), "dB", "below the tone");
        }
    }
}
