package galena.build.modulation;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.engine.envelope.DynamicEnvelope;
import galena.engine.envelope.Envelope;
import galena.engine.envelope.EnvelopeAnswer;
import galena.engine.envelope.EnvelopeInTime;
import galena.engine.envelope.EnvelopeRun;
import galena.engine.envelope.Response;
import galena.engine.envelope.Sidebands;
import galena.engine.envelope.SlowSource;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.signal.modulation.Swing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A carrier, the source that modulates it and the coil whose current is read. One per thread. */
public final class Modulator {
    /** The tone at which depth is usually stated, common practice. */
    public static final double USUAL_TONE = 1000;

    private static final int HARMONICS = 5;
    /** A slow tone's swing is counted by its harmonics up to this. */
    private static final int HARMONICS_OF_SWING = 10;

    private static final double TOLERANCE = 1e-3;
    private static final double MOST_UNSETTLED = 0.01;

    /** Error of a small tone's figures, relative: that of the coarser mesh. */
    private static final double SMALL_ERROR = 1e-3;

    private static final double FLAT_DOWN_TO = 1;
    private static final double FLAT_UP_TO = 200e3;
    private static final double SEARCH = 1.25;
    private static final int BISECTIONS = 24;
    private static final double HALF_POWER = Math.sqrt(0.5);

    private final SteadyState.Found carrier;
    private final String source;
    private final String coil;
    private final String quantity;
    private final Watch watch;
    private final int unknown;
    private Optional<Sidebands> sidebands = Optional.empty();

    /**
     * @param carrier the unmodulated steady state
     * @param source of the audio: a voltage source of the circuit
     * @param coil whose current is read
     * @param quantity that current's name
     * @throws IllegalArgumentException when the coil has no current of its own
     */
    public Modulator(SteadyState.Found carrier, String source, String coil, String quantity, Watch watch) {
        this.carrier = carrier;
        this.source = source;
        this.coil = coil;
        this.quantity = quantity;
        this.watch = watch;
        unknown = carrier.waveforms()
                .equations()
                .current(coil)
                .orElseThrow(() -> new IllegalArgumentException(coil + " has no current of its own"));
    }

    /** Depth (per volt) and swing (Hz per volt) of a small tone. */
    public Response.Modulation small(double audio) {
        return response(audio).modulation(unknown, 0, 1);
    }

    /** The whole small-signal answer at an audio frequency, Hz. */
    public Response response(double audio) {
        watch.check();
        if (sidebands.isEmpty()) sidebands = Optional.of(new Sidebands(carrier, source));
        return sidebands.get().at(audio);
    }

    /** The carrier's peak amplitude in the coil, A, and its frequency, Hz, are those of the mesh that the tone is solved on. */
    private double amplitude() {
        return carrier.coarser().currentAmplitude(coil, 1);
    }

    /**
     * A tone.
     *
     * @param level peak, V, above zero
     * @param audio Hz
     */
    public ToneAnswer at(double level, double audio) {
        EnvelopeAnswer answer =
                new DynamicEnvelope(TOLERANCE, watch).solve(carrier, new SlowSource(source, level, audio));
        if (answer instanceof Envelope envelope) return directly(envelope);
        return new ToneAnswer.NoTone(answer.toString());
    }

    /**
     * A tone that may make the oscillator quit: followed in time where it cannot be solved for.
     *
     * @param mostCycles of the carrier to be followed
     */
    public ToneAnswer atAnyPrice(double level, double audio, int mostCycles) {
        SlowSource tone = new SlowSource(source, level, audio);
        EnvelopeAnswer answer = new DynamicEnvelope(TOLERANCE, watch).solve(carrier, tone);
        if (answer instanceof Envelope envelope) return directly(envelope);
        EnvelopeAnswer run = new EnvelopeInTime(mostCycles, watch).run(carrier, tone);
        if (run instanceof EnvelopeRun followed) return inTime(followed);
        return new ToneAnswer.NoTone(answer + "; and " + run);
    }

    private Modulated directly(Envelope envelope) {
        Envelope coarse = envelope.coarser().orElse(envelope);
        double audio = envelope.source().frequency();
        Trace fine = new Trace(envelope.current(coil, 1), amplitude(), audio);
        Trace rough = new Trace(coarse.current(coil, 1), amplitude(), audio);
        Figure own = swing(envelope.source(), own(envelope), own(coarse), 0, "swing of the oscillation");
        return figures(envelope.source(), Modulated.Way.DIRECTLY, fine, rough, 0, own, false);
    }

    private static double own(Envelope envelope) {
        return Swing.ofPeriod(envelope.phase(), envelope.source().frequency());
    }

    private Modulated inTime(EnvelopeRun run) {
        Trace trace = new Trace(run.current(coil), amplitude(), run.source().frequency());
        Modulated.Way way = run.repeats() > MOST_UNSETTLED ? Modulated.Way.IN_TIME_UNSETTLED : Modulated.Way.IN_TIME;
        Figure none = new Figure.Missing(
                "swing of the oscillation", "an oscillation that quits has no phase to be followed throughout");
        return figures(run.source(), way, trace, trace, run.repeats(), none, quits(run));
    }

    /** Whether the current of the oscillator's own coil dies, and not only what a modulator lets through. */
    private boolean quits(EnvelopeRun run) {
        String own = carrier.site().part();
        if (carrier.waveforms().equations().current(own).isEmpty()) return false;
        double unmodulated = carrier.coarser().currentAmplitude(own, 1);
        return new Trace(run.current(own), unmodulated, run.source().frequency()).deadTime() > 0;
    }

    private Modulated figures(
            SlowSource tone, Modulated.Way way, Trace fine, Trace rough, double loose, Figure own, boolean quits) {
        List<Figure> harmonics = new ArrayList<>();
        double first = fine.period().harmonic(1), firstRough = rough.period().harmonic(1);
        for (int h = 2; h <= HARMONICS; h++) {
            double share = fine.period().harmonic(h) / first,
                    there = rough.period().harmonic(h) / firstRough;
            harmonics.add(known(share, there, loose, Unit.FRACTION, "harmonic " + h + " of the envelope"));
        }
        List<Double> envelope = new ArrayList<>();
        for (double e : fine.envelope()) envelope.add(e);
        return new Modulated(
                quantity,
                tone.level(),
                tone.frequency(),
                way,
                amplitude(),
                fraction(fine.period().positivePeak(), rough.period().positivePeak(), loose, "positive peak"),
                fraction(fine.period().negativePeak(), rough.period().negativePeak(), loose, "negative peak"),
                harmonics,
                fraction(fine.period().distortion(), rough.period().distortion(), loose, "envelope distortion"),
                fraction(fine.period().carrierShift(), rough.period().carrierShift(), loose, "carrier shift"),
                swing(tone, fine.swing(), rough.swing(), loose, "swing"),
                own,
                fine.troubles(quits),
                envelope);
    }

    private Figure swing(SlowSource tone, double value, double rough, double loose, String what) {
        if (tone.frequency() > Swing.HIGHEST || tone.frequency() * HARMONICS_OF_SWING < Swing.LOWEST) {
            return new Figure.Missing(what, "it is counted from 50 Hz to 5 kHz, and the tone lies outside");
        }
        return known(value, rough, loose, Unit.HERTZ, what);
    }

    private Figure fraction(double value, double rough, double loose, String what) {
        return known(value, rough, loose, Unit.FRACTION, what);
    }

    /** Between the two numbers of slow points, and never finer than a ten-thousandth. */
    private Figure known(double value, double rough, double loose, Unit unit, String what) {
        double half = Math.abs(value - rough) + loose * Math.abs(value) + SMALL_ERROR * Math.abs(value) + 1e-5;
        return new Figure.Known(
                value,
                unit,
                value - half,
                value + half,
                "predicted, typical parts, tanks' memory in it",
                what,
                quantity);
    }

    /** The response at audio frequencies (Hz, ascending) and its −3 dB points, against {@link #USUAL_TONE}. */
    public AudioResponse response(double[] audio) {
        double reference = small(USUAL_TONE).depth();
        List<AudioResponse.Point> points = new ArrayList<>();
        for (double f : audio) {
            Response.Modulation there = small(f);
            double decibels = 20 * Math.log10(Math.max(there.depth() / reference, 1e-12));
            points.add(new AudioResponse.Point(f, decibels, there.depth(), there.swing()));
        }
        return new AudioResponse(
                quantity,
                USUAL_TONE,
                points,
                corner(low(), "lower −3 dB point", "flat down to 1 Hz"),
                corner(high(), "upper −3 dB point", "flat up to 200 kHz"));
    }

    private Figure corner(Optional<Double> found, String what, String none) {
        if (found.isEmpty()) return new Figure.Missing(what, none);
        double f = found.get(), half = SMALL_ERROR * f;
        return new Figure.Known(f, Unit.HERTZ, f - half, f + half, "predicted, typical parts", what, quantity);
    }

    /** The −3 dB point below {@link #USUAL_TONE}, Hz. */
    public Optional<Double> low() {
        return corner(1 / SEARCH, FLAT_DOWN_TO);
    }

    /** The one above. */
    public Optional<Double> high() {
        return corner(SEARCH, FLAT_UP_TO);
    }

    private Optional<Double> corner(double factor, double end) {
        double wanted = HALF_POWER * small(USUAL_TONE).depth(), inside = USUAL_TONE, outside = inside * factor;
        while (small(outside).depth() > wanted) {
            inside = outside;
            outside *= factor;
            if (factor > 1 ? outside > end : outside < end) return Optional.empty();
        }
        for (int k = 0; k < BISECTIONS; k++) {
            double middle = Math.sqrt(inside * outside);
            if (small(middle).depth() > wanted) inside = middle;
            else outside = middle;
        }
        return Optional.of(Math.sqrt(inside * outside));
    }

    /** The carrier that is modulated. */
    public SteadyState.Found carrier() {
        return carrier;
    }
}
