package galena.bench.measure;

import galena.bench.capture.Channel;
import galena.bench.capture.IqRecord;
import galena.bench.capture.Understanding;
import galena.bench.capture.Waveforms;
import galena.signal.Estimate;
import galena.signal.carrier.CarrierFinder;
import galena.signal.carrier.RfHarmonics;
import galena.signal.carrier.Samples;
import galena.signal.modulation.EnvelopeFit;
import galena.signal.modulation.ModulatedCarrier;
import galena.signal.modulation.ModulatedCarrier.Programme;
import galena.signal.modulation.Sidebands;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The figures of a carrier, from a scope or a receiver's IQ. */
final class RfMeasurement {
    /** Farther from what is expected than this, the time base is wrong or the carrier aliased. */
    private static final double NEAR = 0.05;
    /** Below this many samples to a cycle the drawn trace no longer shows the envelope. */
    private static final double FEW_PER_CYCLE = 10;

    /** Phase swing (rad) above which sidebands are no measure of depth: 0.1 adds 1 % to their sum at 50 % depth. */
    private static final double LARGEST_INDEX = 0.1;
    /** Three periods of the usual test tone (s). */
    private static final double THREE_PERIODS = 3e-3;

    private final Sheet sheet;
    private final Expected expected;
    private final Understanding understanding;
    private boolean aliased;

    RfMeasurement(Sheet sheet, Expected expected, Understanding understanding) {
        this.sheet = sheet;
        this.expected = expected;
        this.understanding = understanding;
    }

    void waveforms(Waveforms waves) {
        int rf = carrierChannel(waves);
        Channel channel = waves.channels().get(rf);
        Samples samples = Samples.real(channel.samples(), waves.interval());
        ModulatedCarrier.Result result = measure(samples, 0);
        if (!(result instanceof ModulatedCarrier.Found found)) {
            notFound((ModulatedCarrier.NotFound) result);
            return;
        }
        Estimate frequency = carrier(found, samples, 0);
        samplesPerCycle(samples, frequency.value());
        amplitude(found, channel.unit());
        modulation(found);
        harmonics(found);
        Optional<TwoChannels.Drawn> drawn = TwoChannels.trapezoid(sheet, waves, rf, found);
        sheet.draw(Drawing.of(samples, found, channel.unit(), drawn));
        judge(found);
    }

    void iq(IqRecord record) {
        Samples samples =
                Samples.complex(record.inPhase().samples(), record.quadrature().samples(), record.interval());
        double centre = record.centre().orElse(0);
        ModulatedCarrier.Result result = measure(samples, centre);
        if (!(result instanceof ModulatedCarrier.Found found)) {
            notFound((ModulatedCarrier.NotFound) result);
            return;
        }
        carrier(found, samples, centre);
        amplitude(found, record.inPhase().unit());
        modulation(found);
        sheet.miss(
                "harmonics",
                "harmonics of the carrier",
                "dBc",
                "a receiver's IQ holds the neighbourhood of one frequency");
        sheet.draw(Drawing.of(samples, found, record.inPhase().unit(), Optional.empty()));
        judge(found);
    }

    private ModulatedCarrier.Result measure(Samples samples, double centre) {
        OptionalDouble where = expected.carrier();
        if (where.isPresent()) {
            double f = samples.isComplex() ? where.getAsDouble() - centre : where.getAsDouble();
            where = samples.isComplex() || f > samples.rate() / 2 ? OptionalDouble.empty() : OptionalDouble.of(f);
        }
        return ModulatedCarrier.of(
                samples, new ModulatedCarrier.Known(where, expected.mains(), expected.unmodulated()));
    }

    /** The channel with the strongest line near what is expected, or else the one whose line is highest in frequency. */
    private int carrierChannel(Waveforms waves) {
        int best = 0;
        double most = -1;
        for (int c = 0; c < waves.channels().size(); c++) {
            Samples samples = Samples.real(waves.channels().get(c).samples(), waves.interval());
            Optional<CarrierFinder.Line> line = CarrierFinder.strongest(samples.head(1 << 16));
            if (line.isPresent() && line.get().frequency() > most * 1.05) {
                most = line.get().frequency();
                best = c;
            }
        }
        return best;
    }

    private void notFound(ModulatedCarrier.NotFound result) {
        if (result.reason() == ModulatedCarrier.Reason.NO_CARRIER) {
            sheet.find(
                    Finding.Kind.NO_CARRIER,
                    "No line stands out of the noise: check the probe, the channel and the tuning");
            sheet.miss("carrier.frequency", "carrier", "Hz", "no line stands 20 dB out of the noise");
        } else {
            sheet.find(
                    Finding.Kind.TOO_SHORT,
                    "The record is too short to separate a carrier from its harmonics: record more cycles");
            sheet.miss("carrier.frequency", "carrier", "Hz", "the record holds too few cycles");
        }
    }

    private Estimate carrier(ModulatedCarrier.Found found, Samples samples, double centre) {
        Estimate seen = found.frequency().map(f -> f + centre);
        Estimate frequency = seen;
        String how = "phase slope over " + words(found.span(), "s");
        if (expected.carrier().isPresent()
                && Math.abs(seen.value() / expected.carrier().getAsDouble() - 1) > NEAR) {
            OptionalDouble truth = samples.isComplex()
                    ? OptionalDouble.empty()
                    : Aliasing.trueFrequency(
                            seen.value(), samples.rate(), expected.carrier().getAsDouble(), NEAR);
            if (truth.isPresent()) {
                aliased = true;
                double f = truth.getAsDouble(), half = seen.halfWidth();
                frequency = new Estimate(f, f - half, f + half);
                how += ", unfolded: sampled at " + words(samples.rate(), "Hz") + " it appears at "
                        + words(seen.value(), "Hz");
                sheet.find(
                        Finding.Kind.ALIASED,
                        String.format(
                                Locale.ROOT,
                                "Sampled too slowly: the carrier appears at %.1f kHz, its true frequency is %.1f kHz; save the full record, not the screen",
                                seen.value() / 1e3,
                                f / 1e3));
            } else {
                sheet.find(
                        Finding.Kind.WRONG_TIME_BASE,
                        String.format(
                                Locale.ROOT,
                                "The strongest line is at %.1f kHz, not near the expected %.1f kHz: wrong time base, or another signal",
                                seen.value() / 1e3,
                                expected.carrier().getAsDouble() / 1e3));
            }
        }
        double clock = Math.hypot(expected.instrument().clockPpm() * 1e-6, understanding.intervalError());
        // a receiver's one clock sets its tuning and its sampling
        frequency = frequency.joined(clock * Math.abs(frequency.value()));
        sheet.add(
                "carrier.frequency",
                "carrier",
                frequency,
                "Hz",
                String.format(
                        Locale.ROOT,
                        "%s; noise alone ±%.2g Hz, the rest is the clock, ±%.3g ppm",
                        how,
                        seen.halfWidth(),
                        clock * 1e6));
        sheet.add("carrier.drift", "drift within the record", found.drift(), "Hz/s", "curvature of the phase");
        return frequency;
    }

    private void samplesPerCycle(Samples samples, double frequency) {
        double perCycle = samples.rate() / frequency;
        if (!aliased && perCycle < FEW_PER_CYCLE) {
            sheet.find(
                    Finding.Kind.TOO_FEW_SAMPLES,
                    String.format(
                            Locale.ROOT,
                            "%.1f samples to a carrier cycle: the drawn trace misses the crests; the figures are mixed down and hold, harmonics above number %d cannot be had",
                            perCycle,
                            Math.max(1, (int) (0.49 * perCycle))));
        }
    }

    private void amplitude(ModulatedCarrier.Found found, String unit) {
        Estimate a = found.amplitude();
        double gain = expected.instrument().gainPercent() / 100;
        sheet.add(
                "carrier.amplitude",
                "carrier amplitude, peak",
                unit.equals("V") ? a.joined(gain * a.value()) : a,
                unit,
                "mean envelope"
                        + (unit.equals("V")
                                ? String.format(Locale.ROOT, "; gain and probe ±%.3g %%", gain * 100)
                                : "; not in volts"));
    }

    private void modulation(ModulatedCarrier.Found found) {
        Optional<EnvelopeFit> envelope = found.envelope();
        if (envelope.isPresent()) tone(envelope.get(), found);
        else noTone(found);
        hum(found);
        found.noise()
                .ifPresentOrElse(
                        n -> sheet.addRatio(
                                "noise",
                                "noise, 50 Hz to 5 kHz",
                                n,
                                "dBc",
                                "rms of the envelope over the carrier, tone and hum apart; the instrument's noise included"),
                        () -> sheet.miss("noise", "noise, 50 Hz to 5 kHz", "dBc", "the record is too short"));
    }

    private void tone(EnvelopeFit e, ModulatedCarrier.Found found) {
        double bend = expected.instrument().bendPercent()
                / 100
                * (1 + e.positivePeak().value());
        String reference =
                String.format(Locale.ROOT, "; the instrument's bend, ±%.2g %%, is in the interval", 100 * bend)
                        + (e.carrierIsMean() ? "; Ec is the mean envelope" : "; Ec is the unmodulated carrier");
        sheet.addOf("audio", "tone.frequency", "tone", e.tone(), "Hz", "fitted with its harmonics");
        sheet.addShare(
                "depth.positive",
                "positive peak",
                e.positivePeak().joined(bend),
                "Emax/Ec − 1 along the carrier's phase" + reference);
        sheet.addShare(
                "depth.negative",
                "negative peak",
                e.negativePeak().joined(bend),
                "1 − Emin/Ec along the carrier's phase" + reference);
        sheet.addShare(
                "depth", "modulation depth", e.depth().joined(bend), "(Emax − Emin)/(Emax + Emin); bend included");
        if (e.carrierShift().isPresent()) {
            double shift = 100 * e.carrierShift().getAsDouble(),
                    half = 100 * found.amplitude().halfWidth() / e.carrier().value();
            sheet.add(
                    "carrier.shift",
                    "carrier shift",
                    new Estimate(shift, shift - half, shift + half),
                    "%",
                    "mean envelope over the unmodulated carrier, less 1");
        }
        sheet.addShare(
                "distortion",
                "envelope distortion",
                e.distortion(),
                "root of the squares of harmonics 2 to " + e.harmonics()
                        + " over the first; the instrument's own distortion is not in the interval");
        for (int k = 2; k <= Math.min(5, e.harmonics()); k++) {
            sheet.addShare("distortion." + k, "envelope harmonic " + k, e.relative(k), "over the fundamental");
        }
        found.swing()
                .ifPresent(s -> sheet.add(
                        "swing",
                        "swing, peak",
                        s,
                        "Hz",
                        "deviation in step with the tone, 50 Hz to 5 kHz, troughs below 5 % masked"));
        found.sidebands().ifPresent(s -> sidebands(s, e, found, bend));
    }

    /** A bent scale moves a line by half of what it moves an envelope's peak. */
    private void sidebands(Sidebands s, EnvelopeFit e, ModulatedCarrier.Found found, double bend) {
        boolean mirrored = aliased;
        sheet.addRatio(
                mirrored ? "sideband.upper" : "sideband.lower",
                mirrored ? "upper sideband" : "lower sideband",
                s.lower().joined(bend / 2),
                "dBc",
                "line beside the carrier; the instrument's bend included");
        sheet.addRatio(
                mirrored ? "sideband.lower" : "sideband.upper",
                mirrored ? "lower sideband" : "upper sideband",
                s.upper().joined(bend / 2),
                "dBc",
                "line beside the carrier; the instrument's bend included");
        double index = found.swing().map(Estimate::value).orElse(0.0) / e.tone().value();
        if (index > LARGEST_INDEX) {
            sheet.miss(
                    "depth.sidebands",
                    "depth by sidebands",
                    "%",
                    String.format(
                            Locale.ROOT,
                            "swing fills the sidebands too (index %.2f): they no longer stand for depth alone",
                            index));
            return;
        }
        sheet.addShare(
                "depth.sidebands",
                "depth by sidebands",
                s.depth().joined(bend),
                String.format(
                        Locale.ROOT,
                        "sum of the two lines, bend included; the envelope's fundamental gives %.1f %%",
                        100 * e.harmonic(1).value()));
    }

    private void noTone(ModulatedCarrier.Found found) {
        if (found.span() < THREE_PERIODS) {
            sheet.find(
                    Finding.Kind.TOO_SHORT,
                    String.format(
                            Locale.ROOT,
                            "The record is %.2g ms long, less than three periods of a 1 kHz tone: record longer for depth and distortion",
                            1e3 * found.span()));
        }
        if (found.programme() == Programme.NONE) {
            for (String[] f : new String[][] {{"depth.positive", "positive peak"}, {"depth.negative", "negative peak"}})
                sheet.miss(f[0], f[1], "%", "nothing modulates the carrier");
            return;
        }
        double[] reached = found.reached();
        double mean = found.amplitude().value(),
                high = 100 * (reached[0] / mean - 1),
                low = 100 * (1 - reached[1] / mean);
        double noise = 100 * 3 * found.noise().map(Estimate::value).orElse(0.0);
        String how =
                "reached in 0.2 % of the time; Ec is the mean envelope; programme, so its width is a guess from the noise";
        sheet.addShare("depth.positive", "positive peak reached", wide(high / 100, noise / 100), how);
        sheet.addShare("depth.negative", "negative peak reached", wide(low / 100, noise / 100), how);
        sheet.miss(
                "distortion",
                "envelope distortion",
                "%",
                "needs one steady tone of which the record holds three periods");
        sheet.miss("swing", "swing, peak", "Hz", "needs one steady tone of which the record holds three periods");
        sheet.find(
                Finding.Kind.NO_STEADY_TONE,
                "No steady tone: only the peaks reached can be told; feed 1 kHz for depth and distortion");
    }

    private static Estimate wide(double value, double half) {
        double h = Math.max(half, 0.01 * Math.abs(value));
        return new Estimate(value, value - h, value + h);
    }

    private void hum(ModulatedCarrier.Found found) {
        List<ModulatedCarrier.HumLine> lines = found.hum();
        if (lines.isEmpty()) {
            sheet.miss("hum", "hum", "dBc", "the record holds less than two periods of the mains");
            return;
        }
        for (ModulatedCarrier.HumLine line : lines) {
            String f = String.format(Locale.ROOT, "%.0f", line.frequency());
            sheet.addRatio(
                    "hum." + f, "hum at " + f + " Hz", line.ratio(), "dBc", "line of the envelope over the carrier");
        }
    }

    private void harmonics(ModulatedCarrier.Found found) {
        if (aliased) {
            sheet.miss(
                    "harmonics",
                    "harmonics of the carrier",
                    "dBc",
                    "the carrier is aliased, its harmonics lie anywhere");
            return;
        }
        double trust = expected.instrument().trustDbc();
        for (RfHarmonics.Harmonic h : found.harmonics()) {
            double floor = Sheet.decibels(h.floor()),
                    value = Sheet.decibels(Math.max(h.ratio().value(), 1e-12));
            String own = value < trust
                    ? "below the trust limit: it may be the instrument's own; take a null capture"
                    : String.format(
                            Locale.ROOT,
                            "the instrument's own at the trust limit would move it %.1f to +%.1f dB",
                            Sheet.decibels(Math.max(1e-3, 1 - Math.pow(10, (trust - value) / 20))),
                            Sheet.decibels(1 + Math.pow(10, (trust - value) / 20)));
            sheet.addRatio(
                    "harmonic." + h.order(),
                    "harmonic " + h.order(),
                    h.ratio(),
                    "dBc",
                    String.format(
                            Locale.ROOT,
                            "along the carrier's phase; noise floor %.1f dBc, trust limit %.0f dBc (common practice without a null capture); %s",
                            floor,
                            trust,
                            own));
        }
        if (found.harmonics().isEmpty())
            sheet.miss("harmonics", "harmonics of the carrier", "dBc", "they lie above half the sample rate");
    }

    private void judge(ModulatedCarrier.Found found) {
        Judgement.of(sheet, found, expected.instrument().trustDbc());
    }

    private static String words(double x, String unit) {
        return String.format(Locale.ROOT, "%.4g %s", x, unit);
    }
}
