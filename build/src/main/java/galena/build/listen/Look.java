package galena.build.listen;

import galena.build.folder.Supply;
import galena.build.listen.Reduction.Hum;
import galena.build.listen.Reduction.Order;
import galena.build.predict.Envelope;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.circuit.Circuit;
import galena.engine.envelope.Response;
import galena.engine.envelope.Sidebands;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** A look at a build's circuit for listening: solved once, from which a reduction is taken for any rate and order. */
final class Look {
    private static final double LOWEST = 0.3;
    private static final double PER_OCTAVE = 3;
    private static final double TOP = 20e3;
    private static final double SOUND_LOW = 25;
    private static final double SOUND_HIGH = 15e3;
    private static final double BEYOND_SOUND = 0.1;
    private static final double LOWEST_TANK = 40;
    private static final double HIGHEST_CORNER = 0.4;
    /** Where the frequency's slow answer is held against the whole. */
    private static final double QUIET = 60;
    /** Beyond this the static frequency is no measure for the moving one, and a straight line is taken. */
    private static final double SANE = 3;

    private static final double ROOM = 1.25;
    private static final double MOST_ROOM = 8;

    /**
     * Looks at a build.
     *
     * @throws NothingToHear when there is no audio source, or no curve
     */
    static Look at(Running running, Progress progress) throws NothingToHear {
        String source = running.audioSource().orElseThrow(() -> new NothingToHear("the build has no audio source"));
        if (!(running.audioLevel() > 0)) throw new NothingToHear("the audio source has no level");
        String coil = running.outputBranch();
        Carrier carrier = Carrier.of(running, source, progress)
                .orElseThrow(() -> new NothingToHear("the carrier was lost when its capacitors were held"));
        Circuit held = Envelope.hold(
                carrier.full().waveforms(), Envelope.holding(carrier.full().waveforms()));
        SteadyState.Found large = Envelope.centre(carrier.full(), held, Accuracy.LIVE, progress.watch())
                .orElseThrow(() -> new NothingToHear("the carrier was lost when its large capacitors were held"));
        return new Look(running, source, coil, carrier, large, progress);
    }

    private final Running running;
    private final String source;
    private final String coil;
    private final Carrier carrier;
    private final double[] frequencies = grid();
    private final List<SmallSignal> channels = new ArrayList<>();
    private final double[] slope;
    private final StaticCurve curve;
    private final List<Hum> hum;

    private Look(
            Running running, String source, String coil, Carrier carrier, SteadyState.Found large, Progress progress)
            throws NothingToHear {
        this.running = running;
        this.source = source;
        this.coil = coil;
        this.carrier = carrier;
        slope = SmallSignal.standing(large, source, coil);
        SmallSignal.Stays stays = new SmallSignal.Stays(carrier, coil);
        for (Map.Entry<String, Double> input : carrier.inputs().entrySet())
            channels.add(stays.to(input.getKey(), input.getValue(), frequencies));
        hum = lines();
        progress.at(0.1, "modulation curve");
        double range = running.audioLevel() * Math.min(MOST_ROOM, ROOM * Math.max(1, loudest()));
        curve = StaticCurve.of(large, source, coil, range, progress)
                .orElseThrow(() -> new NothingToHear("the carrier stops at a small part of the audio level"));
    }

    /** Largest ratio of what modulates to the source, both channels alike, over the band. */
    private double loudest() {
        double most = 0;
        for (int k = 0; k < frequencies.length; k++) {
            if (frequencies[k] < SOUND_LOW || frequencies[k] > SOUND_HIGH) continue;
            double re = 0, im = 0;
            for (SmallSignal channel : channels) {
                re += channel.slowAmplitude()[k][0] / slope[0];
                im += channel.slowAmplitude()[k][1] / slope[0];
            }
            most = Math.max(most, Math.hypot(re, im));
        }
        return most;
    }

    private List<Hum> lines() {
        List<Hum> lines = new ArrayList<>();
        Optional<Supply.Ripple> ripple = running.build().supply().flatMap(Supply::ripple);
        if (ripple.isEmpty()) return lines;
        Sidebands sidebands = new Sidebands(carrier.full(), Supply.NAME);
        int branch = sidebands.equations().current(coil).orElseThrow();
        double mains = ripple.get().mains().value();
        double[] peaks = {
            ripple.get().once().map(q -> q.value()).orElse(0.0),
            ripple.get().twice().map(q -> q.value()).orElse(0.0)
        };
        for (int k = 0; k < 2; k++) {
            if (!(peaks[k] > 0)) continue;
            Response.Modulation m = sidebands.at((k + 1) * mains).modulation(branch, 0, 1);
            lines.add(new Hum((k + 1) * mains, times(m.amplitude(), peaks[k]), times(m.frequency(), peaks[k])));
        }
        return lines;
    }

    Reduction reduced(Order order, double rate) {
        double level = running.audioLevel();
        FilterBank path = new FilterBank(LOWEST, HIGHEST_CORNER * rate, 1.6, rate);
        FilterBank tank = new FilterBank(LOWEST_TANK, HIGHEST_CORNER * rate, 1.6, rate);
        double[] heed = heed(SOUND_LOW);
        List<double[]> toAmplitude = new ArrayList<>(), toFrequency = new ArrayList<>();
        double kappa = kappa(), pathError = 0;
        for (SmallSignal channel : channels) {
            double[][] v = scaled(order == Order.SPLIT ? channel.slowAmplitude() : channel.amplitude(), 1 / slope[0]);
            double[][] f = scaled(channel.slowFrequency(), kappa * (straight() ? 1 : 1 / slope[1]));
            double[] weights = path.fit(frequencies, v, heed);
            pathError = Math.max(pathError, path.error(weights, frequencies, v, heed));
            toAmplitude.add(times(weights, level));
            toFrequency.add(times(path.fit(frequencies, f, heed), level));
        }
        double[][][] response = sidebands(order, kappa);
        int quiet = quiet();
        double phase = response[1][quiet][0];
        for (double[] each : response[1]) each[0] -= phase;
        double[] tankHeed = heed(LOWEST_TANK);
        double[] inPhase = tank.fit(frequencies, response[0], tankHeed);
        double[] quadrature = tank.fit(frequencies, response[1], tankHeed);
        double tankError = tank.error(inPhase, frequencies, response[0], tankHeed);
        return new Reduction(
                rate,
                order,
                path,
                toAmplitude,
                toFrequency,
                straight() ? curve.straight() : curve,
                tank,
                inPhase,
                quadrature,
                phase,
                hum,
                level,
                carrier.full().waveforms().frequency(),
                pathError,
                tankError);
    }

    /** The source's standing effect on the frequency is too small, beside what passes for a while, to lay a curve by. */
    private boolean straight() {
        double most = 0;
        for (int k = 0; k < frequencies.length; k++) {
            if (frequencies[k] < SOUND_LOW || frequencies[k] > SOUND_HIGH) continue;
            double[] sum = sum(SmallSignal::slowFrequency, k);
            most = Math.max(most, Math.hypot(sum[0], sum[1]));
        }
        return most > SANE * Math.abs(slope[1]) * Math.max(1, loudest());
    }

    private double[] sum(Function<SmallSignal, double[][]> of, int k) {
        double[] sum = new double[2];
        for (SmallSignal channel : channels)
            for (int part = 0; part < 2; part++) sum[part] += of.apply(channel)[k][part];
        return sum;
    }

    /**
     * A capacitor held by a source is a short for the carrier as well, which shifts the smallest of sensitivities: the slow
     * frequency is scaled to the whole where the tank remembers nothing yet.
     */
    private double kappa() {
        int at = quiet();
        double[] slow = sum(SmallSignal::slowFrequency, at), all = sum(SmallSignal::frequency, at);
        double square = slow[0] * slow[0] + slow[1] * slow[1];
        if (square == 0) return 1;
        double kappa = (slow[0] * all[0] + slow[1] * all[1]) / square;
        return kappa > 1.0 / SANE && kappa < SANE ? kappa : 1;
    }

    private int quiet() {
        int at = 0;
        while (at < frequencies.length - 1 && frequencies[at] < QUIET) at++;
        return at;
    }

    /** Envelope in phase and in quadrature over the static amplitude's departure, by frequency. */
    private double[][][] sidebands(Order order, double kappa) {
        int n = frequencies.length;
        double[][] in = new double[n][2], off = new double[n][2];
        for (int k = 0; k < n; k++) {
            double[] drive = sum(order == Order.SPLIT ? SmallSignal::slowAmplitude : SmallSignal::amplitude, k);
            double[] a = sum(SmallSignal::amplitude, k), s = sum(SmallSignal::frequency, k);
            double[] slow = sum(SmallSignal::slowFrequency, k);
            // phase 2π Δf/(jω) = −j Δf/f
            double re = (s[1] - kappa * slow[1]) / frequencies[k], im = -(s[0] - kappa * slow[0]) / frequencies[k];
            in[k] = divided(a[0], a[1], drive);
            off[k] = divided(re, im, drive);
        }
        return new double[][][] {in, off};
    }

    /** In full where it is heard. */
    private double[] heed(double from) {
        double[] heed = new double[frequencies.length];
        for (int k = 0; k < heed.length; k++) {
            boolean heard = frequencies[k] >= from && frequencies[k] <= SOUND_HIGH;
            heed[k] = heard ? 1 : frequencies[k] < from ? BEYOND_SOUND * frequencies[k] / from : BEYOND_SOUND;
        }
        return heed;
    }

    StaticCurve curve() {
        return curve;
    }

    List<Hum> hum() {
        return hum;
    }

    /** Swing (Hz) of a tone at the programme's level, small-signal, at the looked-at frequency nearest to one. */
    double swing(double frequency) {
        int nearest = 0;
        for (int k = 0; k < frequencies.length; k++)
            if (Math.abs(frequencies[k] - frequency) < Math.abs(frequencies[nearest] - frequency)) nearest = k;
        double[] all = sum(SmallSignal::frequency, nearest);
        return running.audioLevel() * Math.hypot(all[0], all[1]);
    }

    String source() {
        return source;
    }

    String coil() {
        return coil;
    }

    Running running() {
        return running;
    }

    private static double[] grid() {
        int n = 1 + (int) Math.round(PER_OCTAVE * Math.log(TOP / LOWEST) / Math.log(2));
        double[] grid = new double[n];
        for (int k = 0; k < n; k++) grid[k] = LOWEST * Math.pow(TOP / LOWEST, k / (n - 1.0));
        return grid;
    }

    private static double[][] scaled(double[][] z, double factor) {
        double[][] out = new double[z.length][];
        for (int k = 0; k < z.length; k++) out[k] = times(z[k], factor);
        return out;
    }

    private static double[] times(double[] z, double factor) {
        double[] out = z.clone();
        for (int k = 0; k < out.length; k++) out[k] *= factor;
        return out;
    }

    private static double[] divided(double re, double im, double[] by) {
        double square = by[0] * by[0] + by[1] * by[1];
        if (square == 0) return new double[2];
        return new double[] {(re * by[0] + im * by[1]) / square, (im * by[0] - re * by[1]) / square};
    }
}
