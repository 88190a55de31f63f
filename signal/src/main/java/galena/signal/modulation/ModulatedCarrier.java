package galena.signal.modulation;

import galena.signal.Estimate;
import galena.signal.carrier.Baseband;
import galena.signal.carrier.CarrierFinder;
import galena.signal.carrier.CarrierTrack;
import galena.signal.carrier.RfHarmonics;
import galena.signal.carrier.Samples;
import galena.signal.fit.SeriesFit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything a capture says of one modulated carrier. In order: find the carrier, mix it down, follow its phase, find the
 * tone in the envelope, fit the phase with the tone's harmonics, and with that phase the envelope. Each stage takes its
 * noise from what it leaves over.
 */
public final class ModulatedCarrier {
    private ModulatedCarrier() {}

    /**
     * What is known beforehand; each may be empty.
     *
     * @param carrier where to look (Hz), ±5 %
     * @param mains frequency of the mains (Hz); otherwise 50 and 60 are both tried
     * @param unmodulated the carrier's peak without modulation, unit of the capture
     */
    public record Known(OptionalDouble carrier, OptionalDouble mains, OptionalDouble unmodulated) {
        /** Nothing is known. */
        public static Known nothing() {
            return new Known(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        }
    }

    /** What modulates. */
    public enum Programme {
        /** Nothing that stands out. */
        NONE,
        /** One steady tone with its harmonics: depth and distortion can be told. */
        TONE,
        /** Speech, music or several tones: only the peaks reached can be told. */
        MIXED
    }

    /** What came out. */
    public sealed interface Result permits Found, NotFound {}

    /** Why there is nothing to measure. */
    public enum Reason {
        /** No line stands 20 dB out of the noise: no carrier, wrong file, or a carrier drowned by another. */
        NO_CARRIER,
        /** The record holds too few cycles to filter one carrier out: record longer, or sample slower. */
        TOO_SHORT
    }

    /** Nothing to measure. */
    public record NotFound(Reason reason) implements Result {}

    /**
     * One line of hum.
     *
     * @param frequency (Hz)
     * @param ratio amplitude of the envelope's line over the carrier, a fraction
     */
    public record HumLine(double frequency, Estimate ratio) {}

    /** Highest harmonic of the carrier looked for. */
    static final int RF_HARMONICS = 10;

    /** A tone explains at least this share of the envelope's power in the band. */
    private static final double TONE_SHARE = 0.95;
    /** Below this depth a line is not called a tone. */
    private static final double SMALLEST_DEPTH = 0.01;

    private static final int HUM_LINES = 6;

    /** Measures a capture, which is read. */
    public static Result of(Samples samples, Known known) {
        Optional<CarrierFinder.Line> line = find(samples, known);
        if (line.isEmpty()) return new NotFound(Reason.NO_CARRIER);
        Optional<Baseband> mixed = Baseband.of(samples, line.get().frequency());
        if (mixed.isEmpty() || mixed.get().length() < 24) return new NotFound(Reason.TOO_SHORT);
        Baseband z = mixed.get();
        CarrierTrack track = CarrierTrack.of(z);
        double[] rough = track.envelope();
        Optional<SeriesFit> tone = tone(rough, z);
        Optional<SeriesFit> whole = phase(track.phase(), track, z, tone);
        if (whole.isEmpty()) return new NotFound(Reason.TOO_SHORT);
        double[] wander = SlowPhase.wander(track, z, whole.get());
        // swing is sought beside the wander, the carrier's frequency and drift with it
        SeriesFit swing = SlowPhase.wanders(whole.get())
                ? phase(SlowPhase.joined(track.phase(), -1, wander), track, z, tone)
                        .orElse(whole.get())
                : whole.get();
        double[] followed = SlowPhase.joined(SlowPhase.fitted(swing, z, true), 1, wander);
        double[] slow = SlowPhase.joined(SlowPhase.fitted(swing, z, false), 1, wander);
        double[] envelope = tone.isPresent() ? CarrierTrack.alongPhase(z, followed) : rough;
        Hum hum = Hum.of(envelope, z, tone, known.mains());
        List<RfHarmonics.Harmonic> harmonics =
                samples.isComplex() ? List.of() : RfHarmonics.of(samples, z, followed, RF_HARMONICS);
        return new Found(
                z,
                envelope,
                whole.get(),
                swing,
                hum,
                tone.isPresent(),
                known.unmodulated(),
                harmonics,
                sidebands(z, slow, tone));
    }

    private static Optional<CarrierFinder.Line> find(Samples samples, Known known) {
        if (known.carrier().isEmpty()) return CarrierFinder.strongest(samples);
        double f = Math.abs(known.carrier().getAsDouble());
        Optional<CarrierFinder.Line> near = CarrierFinder.strongest(samples, 0.95 * f, 1.05 * f);
        return near.isPresent() ? near : CarrierFinder.strongest(samples);
    }

    /** The tone with its harmonics, if it makes up most of what modulates. */
    private static Optional<SeriesFit> tone(double[] envelope, Baseband z) {
        Optional<SeriesFit> single = ToneFinder.find(envelope, z.interval(), z.passband());
        if (single.isEmpty()) return Optional.empty();
        double depth =
                ToneFinder.amplitude(single.get()) / single.get().trend(0).value();
        if (depth < SMALLEST_DEPTH || mainsLike(single.get(), depth)) return Optional.empty();
        double f = single.get().frequency().value();
        SeriesFit.Model model = new SeriesFit.Model(f, true, harmonics(f, z), List.of(), 1);
        return SeriesFit.of(envelope, null, z.interval(), z.passband(), model).filter(full -> {
            double left = full.floor().power(Math.max(20, 2 / full.span()), Math.min(5000, z.passband()));
            double share = Math.pow(ToneFinder.amplitude(full), 2) / 2;
            return share / (share + left) > TONE_SHARE;
        });
    }

    /** A shallow line at a multiple of a mains frequency is hum and not a test tone. */
    private static boolean mainsLike(SeriesFit fit, double depth) {
        double f = fit.frequency().value(), resolution = Math.max(0.5, 1 / fit.span());
        boolean fifty = Math.abs(f / 50 - Math.rint(f / 50)) * 50 < resolution && f < 310;
        boolean sixty = Math.abs(f / 60 - Math.rint(f / 60)) * 60 < resolution && f < 370;
        return depth < 0.1 && (fifty || sixty);
    }

    static int harmonics(double tone, Baseband z) {
        int room = (z.length() - 12) / 4;
        return (int) Math.max(1, Math.min(Math.min(EnvelopeFit.HARMONICS, room), Math.floor(z.passband() / tone)));
    }

    private static Optional<SeriesFit> phase(double[] phase, CarrierTrack track, Baseband z, Optional<SeriesFit> tone) {
        double[] weight = track.envelope();
        for (int k = 0; k < weight.length; k++) weight[k] = track.masked(k) ? 0 : Math.abs(weight[k]);
        if (tone.isEmpty()) return phaseFit(phase, weight, z, 0, 0, false);
        double f = tone.get().frequency().value();
        int harmonics = Math.min(5, harmonics(f, z));
        Optional<SeriesFit> fixed = phaseFit(phase, weight, z, f, harmonics, false);
        // a strong swing tells the tone better than the envelope did, and a wrong tone would tilt the carrier
        boolean strong = fixed.isPresent()
                && ToneFinder.amplitude(fixed.get()) > 10 * fixed.get().sigmaOfHarmonic(1);
        return strong ? phaseFit(phase, weight, z, f, harmonics, true).or(() -> fixed) : fixed;
    }

    private static Optional<SeriesFit> phaseFit(
            double[] phase, double[] weight, Baseband z, double f, int harmonics, boolean refined) {
        SeriesFit.Model model = new SeriesFit.Model(f, refined, harmonics, List.of(), 2);
        return SeriesFit.of(phase, weight, z.interval(), z.passband(), model);
    }

    private static Optional<Sidebands> sidebands(Baseband z, double[] slow, Optional<SeriesFit> tone) {
        if (tone.isEmpty()) return Optional.empty();
        double f = tone.get().frequency().value();
        SeriesFit.Model model = new SeriesFit.Model(f, false, harmonics(f, z), List.of(), 0);
        Optional<SeriesFit> along =
                SeriesFit.of(CarrierTrack.alongPhase(z, slow), null, z.interval(), z.passband(), model);
        Optional<SeriesFit> across =
                SeriesFit.of(CarrierTrack.acrossPhase(z, slow), null, z.interval(), z.passband(), model);
        return along.flatMap(a -> across.map(b -> Sidebands.of(a, b, z.response(f))));
    }

    /** The measures of a carrier that was found. */
    public static final class Found implements Result {
        private final Baseband z;
        private final double[] envelope;
        private final SeriesFit phase;
        private final SeriesFit swing;
        private final Hum hum;
        private final boolean tone;
        private final OptionalDouble unmodulated;
        private final List<RfHarmonics.Harmonic> harmonics;
        private final Optional<Sidebands> sidebands;

        Found(
                Baseband z,
                double[] envelope,
                SeriesFit phase,
                SeriesFit swing,
                Hum hum,
                boolean tone,
                OptionalDouble unmodulated,
                List<RfHarmonics.Harmonic> harmonics,
                Optional<Sidebands> sidebands) {
            this.z = z;
            this.envelope = envelope;
            this.phase = phase;
            this.swing = swing;
            this.hum = hum;
            this.tone = tone;
            this.unmodulated = unmodulated;
            this.harmonics = List.copyOf(harmonics);
            this.sidebands = sidebands;
        }

        /** Mean frequency over the record (Hz) by the capture's own time base; below the centre it is negative. */
        public Estimate frequency() {
            Estimate slope = phase.trend(1); // rad over half the record
            double perHertz = Math.PI * phase.span();
            return new Estimate(
                    z.mixedWith() + slope.value() / perHertz,
                    z.mixedWith() + slope.low() / perHertz,
                    z.mixedWith() + slope.high() / perHertz);
        }

        /** Drift within the record (Hz/s). */
        public Estimate drift() {
            double scale = 4 / (Math.PI * phase.span() * phase.span());
            return phase.trend(2).map(c -> c * scale);
        }

        /** Mean of the envelope (peak, unit of the capture). */
        public Estimate amplitude() {
            return hum.fit().trend(0);
        }

        /** What modulates. */
        public Programme programme() {
            if (tone) return Programme.TONE;
            double[] sorted = sortedEnvelope();
            double spread = (sorted[(int) (0.95 * (sorted.length - 1))] - sorted[(int) (0.05 * (sorted.length - 1))])
                    / amplitude().value();
            double noise = Math.sqrt(hum.fit().floor().varianceAt(z.passband() / 2))
                    / amplitude().value();
            return spread > Math.max(2 * SMALLEST_DEPTH, 5 * noise) ? Programme.MIXED : Programme.NONE;
        }

        /** The figures of the envelope, if a steady tone modulates. */
        public Optional<EnvelopeFit> envelope() {
            return tone ? Optional.of(new EnvelopeFit(hum.fit(), z::response, unmodulated)) : Optional.empty();
        }

        /** Highest and lowest envelope reached (99.8 and 0.2 % of the time; unit of the capture), noise included. */
        public double[] reached() {
            double[] sorted = sortedEnvelope();
            return new double[] {
                sorted[(int) (0.998 * (sorted.length - 1))], sorted[(int) (0.002 * (sorted.length - 1))]
            };
        }

        /** Swing (peak Hz), if a steady tone modulates. */
        public Optional<Estimate> swing() {
            return tone ? Optional.of(Swing.of(swing, z)) : Optional.empty();
        }

        /** Lines at the mains frequency and its multiples; empty when the record holds less than two mains periods. */
        public List<HumLine> hum() {
            return hum.lines(amplitude().value());
        }

        /** Noise on the envelope from 50 Hz to 5 kHz, rms over the carrier, tone and hum apart; empty if too short. */
        public Optional<Estimate> noise() {
            return hum.noise(amplitude().value());
        }

        /** The first sidebands, if a steady tone modulates. */
        public Optional<Sidebands> sidebands() {
            return sidebands;
        }

        /** Harmonics of the carrier that the sample rate allows; none in a complex capture. */
        public List<RfHarmonics.Harmonic> harmonics() {
            return harmonics;
        }

        /** The signed envelope (unit of the capture), one value per {@link #envelopeInterval}. */
        public double[] envelopeSamples() {
            return envelope.clone();
        }

        /** Time between envelope samples (s). */
        public double envelopeInterval() {
            return z.interval();
        }

        /** Time of the first envelope sample after the capture's first (s). */
        public double envelopeStart() {
            return z.start();
        }

        /** Length of record measured (s). */
        public double span() {
            return phase.span();
        }

        private double[] sortedEnvelope() {
            double[] sorted = envelope.clone();
            Arrays.sort(sorted);
            return sorted;
        }
    }

    /** The envelope fitted with tone and hum together, so that neither falls into the other. */
    private record Hum(SeriesFit fit, List<Double> frequencies, double passband) {
        static Hum of(double[] envelope, Baseband z, Optional<SeriesFit> tone, OptionalDouble mains) {
            if (mains.isPresent()) return with(envelope, z, tone, mains.getAsDouble());
            Hum fifty = with(envelope, z, tone, 50), sixty = with(envelope, z, tone, 60);
            return sixty.strength() > fifty.strength() ? sixty : fifty;
        }

        private static Hum with(double[] envelope, Baseband z, Optional<SeriesFit> tone, double mains) {
            double span = envelope.length * z.interval();
            double f = tone.map(t -> t.frequency().value()).orElse(0.0);
            int harmonics = tone.isPresent() ? harmonics(f, z) : 0;
            List<Double> lines = new ArrayList<>();
            for (int k = 1; k <= HUM_LINES && mains * span >= 2; k++) {
                if (clear(k * mains, f, harmonics, span) && k * mains < z.passband()) lines.add(k * mains);
            }
            Optional<SeriesFit> full = fit(envelope, z, f, harmonics, lines);
            if (full.isEmpty()) {
                lines.clear();
                full = fit(envelope, z, f, harmonics, lines);
            }
            return new Hum(
                    full.or(() -> fit(envelope, z, 0, 0, List.of())).orElseThrow(), List.copyOf(lines), z.passband());
        }

        private static Optional<SeriesFit> fit(double[] e, Baseband z, double f, int harmonics, List<Double> lines) {
            return SeriesFit.of(
                    e, null, z.interval(), z.passband(), new SeriesFit.Model(f, harmonics > 0, harmonics, lines, 1));
        }

        /** A line of hum is told apart from a harmonic of the tone when 1.5 bins lie between them. */
        private static boolean clear(double line, double tone, int harmonics, double span) {
            if (tone == 0) return true;
            double nearest = Math.max(1, Math.min(harmonics, Math.rint(line / tone))) * tone;
            return Math.abs(line - nearest) * span > 1.5;
        }

        double strength() {
            double sum = 0;
            for (int l = 0; l < frequencies.size(); l++)
                sum += Math.pow(fit.line(l).value(), 2);
            return sum;
        }

        List<HumLine> lines(double carrier) {
            List<HumLine> out = new ArrayList<>();
            for (int l = 0; l < frequencies.size(); l++) {
                out.add(new HumLine(frequencies.get(l), fit.line(l).map(a -> a / carrier)));
            }
            return out;
        }

        /** Its degrees of freedom f give the interval: ±1.96 √(2/f) on the power, by the cube-root normal law. */
        Optional<Estimate> noise(double carrier) {
            double high = Math.min(Swing.HIGHEST, passband);
            double freedom = fit.floor().freedom(Swing.LOWEST, high);
            if (freedom < 8) return Optional.empty();
            double power = fit.floor().power(Swing.LOWEST, high), h = 2 / (9 * freedom);
            double up = Math.pow(1 - h - Estimate.NORMAL_95 * Math.sqrt(h), 3);
            double down = Math.pow(1 - h + Estimate.NORMAL_95 * Math.sqrt(h), 3);
            return Optional.of(
                    new Estimate(Math.sqrt(power), Math.sqrt(power / down), Math.sqrt(power / Math.max(0.05, up)))
                            .map(a -> a / carrier));
        }
    }
}
