package galena.signal.modulation;

import galena.signal.spectrum.PeriodicWaveform;

/**
 * The figures of an envelope known over one audio period on a uniform grid, as a prediction knows it. The envelope is
 * signed: along the carrier's phase, negative past 100 %. Between grid points it is the trigonometric polynomial through
 * them, so that a peak is not missed for falling between two points.
 */
public final class EnvelopePeriod {
    private static final int FINER = 16;
    /** Harmonics below this share of the carrier move no peak. */
    private static final double SILENT = 1e-9;

    private final PeriodicWaveform series;
    private final double carrier;
    private final int samples;

    /**
     * @param envelope one period, the end point not repeated, in the unit of the named quantity
     * @param carrier the unmodulated carrier's peak, same unit
     */
    public EnvelopePeriod(double[] envelope, double carrier) {
        if (!(carrier > 0))
            throw new IllegalArgumentException("The carrier's amplitude must be positive, got " + carrier);
        this.series = PeriodicWaveform.of(envelope);
        this.carrier = carrier;
        this.samples = envelope.length;
    }

    /** Envelope at a fraction of the period. */
    public double at(double turn) {
        double sum = series.mean();
        for (int k = 1; k <= series.highest(); k++) {
            if (series.amplitude(k) < SILENT * carrier) continue;
            sum += series.amplitude(k) * Math.cos(2 * Math.PI * k * turn + series.phase(k));
        }
        return sum;
    }

    /** The largest of sign times the envelope, times sign. */
    private double extreme(int sign) {
        double most = Double.NEGATIVE_INFINITY;
        int places = samples * FINER;
        for (int k = 0; k < places; k++) most = Math.max(most, sign * at(k / (double) places));
        return sign * most;
    }

    /** Emax/Ec − 1, a fraction. */
    public double positivePeak() {
        return Depth.positivePeak(extreme(1), carrier);
    }

    /** 1 − Emin/Ec, a fraction; above 1 when overmodulated. */
    public double negativePeak() {
        return Depth.negativePeak(extreme(-1), carrier);
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
