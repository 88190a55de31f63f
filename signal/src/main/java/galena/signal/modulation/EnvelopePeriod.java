package galena.signal.modulation;

import galena.signal.spectrum.PeriodicWaveform;

/**
 * The figures of an envelope known over one audio period on a uniform grid, as a prediction knows it. The envelope is
 * signed: along the carrier's phase, negative past 100 %. Between grid points it is the trigonometric polynomial through
 * them, so that a peak is not missed for falling between two points.
 */
public final class EnvelopePeriod {
    private static final int FINER = 16;

    private final PeriodicWaveform series;
    private final double carrier;
    private final double highest;
    private final double lowest;

    /**
     * @param envelope one period, the end point not repeated, in the unit of the named quantity
     * @param carrier the unmodulated carrier's peak, same unit
     */
    public EnvelopePeriod(double[] envelope, double carrier) {
        if (!(carrier > 0))
            throw new IllegalArgumentException("The carrier's amplitude must be positive, got " + carrier);
        this.series = PeriodicWaveform.of(envelope);
        this.carrier = carrier;
        double high = Double.NEGATIVE_INFINITY, low = Double.POSITIVE_INFINITY;
        for (int k = 0; k < envelope.length * FINER; k++) {
            double e = at(k / (double) (envelope.length * FINER));
            high = Math.max(high, e);
            low = Math.min(low, e);
        }
        this.highest = high;
        this.lowest = low;
    }

    /** Envelope at a fraction of the period. */
    public double at(double turn) {
        double sum = series.mean();
        for (int k = 1; k <= series.highest(); k++) {
            sum += series.amplitude(k) * Math.cos(2 * Math.PI * k * turn + series.phase(k));
        }
        return sum;
    }

    /** Emax/Ec − 1, a fraction. */
    public double positivePeak() {
        return Depth.positivePeak(highest, carrier);
    }

    /** 1 − Emin/Ec, a fraction; above 1 when overmodulated. */
    public double negativePeak() {
        return Depth.negativePeak(lowest, carrier);
    }

    /** Mean envelope over the unmodulated carrier, less 1. */
    public double carrierShift() {
        return series.mean() / carrier - 1;
    }

    /** Amplitude of audio harmonic k over the carrier, a fraction: k = 1 is the depth of the fundamental. */
    public double harmonic(int k) {
        return series.amplitude(k) / carrier;
    }

    /** Total distortion of the envelope over harmonics 2..10, relative to its fundamental. */
    public double distortion() {
        return series.totalDistortion(EnvelopeFit.HARMONICS);
    }
}
