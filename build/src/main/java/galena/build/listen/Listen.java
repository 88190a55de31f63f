package galena.build.listen;

import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.signal.receiver.ReceiverSettings;
import java.util.Comparator;
import java.util.List;

/**
 * A build made ready to be listened to: its circuit looked at, reduced for one rate, and held against its full envelope. Of the two
 * places where memory may stand the one that agrees better is taken. Immutable; streams come from {@link #through}.
 */
public final class Listen {
    private final Look look;
    private final Reduction reduction;
    private final List<Agreement> agreements;
    private final int factor;

    private Listen(Look look, Reduction reduction, List<Agreement> agreements, int factor) {
        this.look = look;
        this.reduction = reduction;
        this.agreements = List.copyOf(agreements);
        this.factor = factor;
    }

    /**
     * @param running the build, unmodulated
     * @param rate of the programme, Hz, 8000 to 400 000
     * @throws NothingToHear when the build has no audio source, or its carrier cannot be modulated
     */
    public static Listen to(Running running, double rate, Progress progress) throws NothingToHear {
        if (!(rate >= 8000 && rate <= 400e3))
            throw new IllegalArgumentException("a rate lies between 8 and 400 kHz, not at " + rate + " Hz");
        int factor = Listening.factor(rate);
        Look look = Look.at(running, progress);
        List<Agreement.Truth> truths = Agreement.truths(look, rate * factor, progress);
        Listen best = null;
        for (Reduction.Order order : Reduction.Order.values()) {
            Reduction reduction = look.reduced(order, rate * factor);
            List<Agreement> agreements =
                    truths.stream().map(t -> Agreement.of(t, reduction)).toList();
            Listen one = new Listen(look, reduction, agreements, factor);
            if (best == null || one.worst() < best.worst()) best = one;
        }
        if (best == null) throw new IllegalStateException("there is no order to choose from");
        return best;
    }

    private double worst() {
        return agreements.stream()
                .max(Comparator.comparingDouble(Agreement::depthError))
                .map(Agreement::depthError)
                .orElse(0.0);
    }

    /**
     * A fresh stream.
     *
     * @param settings of the set
     * @param noiseToCarrier rms noise over carrier in the set's bandwidth; 0 for silence
     */
    public Listening through(ReceiverSettings settings, double noiseToCarrier) {
        return new Listening(reduction, factor, settings, noiseToCarrier);
    }

    /** What a listener gets of tones, reckoned and tried without noise. */
    public Sound sound(ReceiverSettings settings) {
        return new Sounding(look, reduction, settings).sound();
    }

    /** The reduced model beside the full envelope; empty where that could not be solved. */
    public List<Agreement> agreements() {
        return agreements;
    }

    /** Where the memory was put, in words. */
    public String order() {
        return reduction.order().toString();
    }

    /** Largest departures of the fitted responses, 25 Hz to 15 kHz, as a share of their largest: audio path, sidebands. */
    public double[] fitErrors() {
        return new double[] {reduction.pathError(), reduction.tankError()};
    }

    /** Samples a second that the model runs at, Hz. */
    public double rate() {
        return reduction.rate();
    }

    /** Carrier, Hz. */
    public double carrier() {
        return reduction.carrier();
    }
}
