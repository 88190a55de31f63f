package galena.bench.measure;

import java.util.List;

/**
 * Thinned data for plots; a list is empty when there is nothing to draw.
 *
 * @param waveTimes (s) and {@code waveLow}, {@code waveHigh}: extremes of the waveform between neighbouring times
 * @param waveLow unit of the capture
 * @param waveHigh unit of the capture
 * @param envelopeTimes (s)
 * @param envelope signed, unit of the capture
 * @param frequencies of the spectrum (Hz)
 * @param levels of the spectrum (dBc), the highest in each interval of frequencies
 * @param floor of the noise in the same spectrum (dBc)
 * @param trapezoid audio and envelope alternating, samples
 * @param trapezoidCurve audio and envelope alternating, the fitted curve
 * @param unit of the capture
 */
public record Pictures(
        List<Double> waveTimes,
        List<Double> waveLow,
        List<Double> waveHigh,
        List<Double> envelopeTimes,
        List<Double> envelope,
        List<Double> frequencies,
        List<Double> levels,
        double floor,
        List<Double> trapezoid,
        List<Double> trapezoidCurve,
        String unit) {
    public Pictures {
        waveTimes = List.copyOf(waveTimes);
        waveLow = List.copyOf(waveLow);
        waveHigh = List.copyOf(waveHigh);
        envelopeTimes = List.copyOf(envelopeTimes);
        envelope = List.copyOf(envelope);
        frequencies = List.copyOf(frequencies);
        levels = List.copyOf(levels);
        trapezoid = List.copyOf(trapezoid);
        trapezoidCurve = List.copyOf(trapezoidCurve);
    }

    /** Nothing to draw. */
    public static Pictures none() {
        return new Pictures(
                List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), 0, List.of(), List.of(),
                "");
    }
}
