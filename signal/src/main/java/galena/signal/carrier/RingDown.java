package galena.signal.carrier;

import galena.signal.Estimate;
import galena.signal.fit.NormalEquations;
import galena.signal.fit.StudentT;
import java.util.Arrays;
import java.util.Optional;

/**
 * Q of a circuit left to itself: E(t) = A exp(−π f t/Q), a straight line in the logarithm, weighted by E² because that is
 * how little the noise moves it. Only the part from the largest envelope down to five times the noise is used.
 *
 * @param frequency (Hz)
 * @param q quality factor, loaded by whatever hangs on the circuit
 */
public record RingDown(Estimate frequency, Estimate q) {
    private static final int FEWEST = 6;

    /** @return empty when nothing rings, or it dies within too few samples of the envelope */
    public static Optional<RingDown> of(Samples samples) {
        Samples ringing = ringing(samples);
        Optional<CarrierFinder.Line> line = CarrierFinder.strongest(ringing);
        if (line.isEmpty()) return Optional.empty();
        double f = Math.abs(line.get().frequency());
        return Baseband.of(ringing, line.get().frequency(), f / 3).flatMap(RingDown::of);
    }

    /** From the strongest block of the record to twice as far as where the ringing falls into the noise. */
    private static Samples ringing(Samples samples) {
        int block = Math.max(8, samples.length() / 400), blocks = samples.length() / block, peak = 0;
        if (blocks < 8) return samples;
        double[] energy = new double[blocks];
        for (int k = 0; k < blocks * block; k++) {
            energy[k / block] += samples.re(k) * samples.re(k) + samples.im(k) * samples.im(k);
        }
        double[] sorted = energy.clone();
        Arrays.sort(sorted);
        for (int b = 1; b < blocks; b++) if (energy[b] > energy[peak]) peak = b;
        int end = peak;
        while (end < blocks && energy[end] > 4 * sorted[blocks / 4]) end++;
        int from = peak * block, to = Math.min(samples.length(), (2 * end - peak + 2) * block);
        double[] re = new double[to - from], im = new double[to - from];
        for (int k = from; k < to; k++) {
            re[k - from] = samples.re(k);
            im[k - from] = samples.im(k);
        }
        return samples.isComplex() ? Samples.complex(re, im, samples.interval()) : Samples.real(re, samples.interval());
    }

    private static Optional<RingDown> of(Baseband z) {
        int n = z.length(), first = 0;
        double[] e = new double[n];
        for (int k = 0; k < n; k++) {
            e[k] = Math.hypot(z.re(k), z.im(k));
            if (e[k] > e[first]) first = k;
        }
        double tail = 0;
        int from = n - Math.max(4, n / 10);
        for (int k = Math.max(0, from); k < n; k++) tail = Math.max(tail, e[k]);
        int last = first;
        // the filter's own response blurs the start by its length; five noise peaks end the line
        while (last + 1 < n && e[last + 1] > Math.max(5 * tail, 0.003 * e[first])) last++;
        first += 2;
        if (last - first < FEWEST) return Optional.empty();
        return fit(z, e, first, last);
    }

    private static Optional<RingDown> fit(Baseband z, double[] e, int first, int last) {
        NormalEquations decay = new NormalEquations(2), turn = new NormalEquations(2);
        double[] phase = new double[last - first + 1];
        double middle = (first + last) / 2.0 * z.interval();
        for (int k = first; k <= last; k++) {
            double[] row = {1, k * z.interval() - middle};
            double theta = Math.atan2(z.im(k), z.re(k)), before = k == first ? theta : phase[k - 1 - first];
            phase[k - first] = theta - 2 * Math.PI * Math.rint((theta - before) / (2 * Math.PI));
            decay.add(row, Math.log(e[k]), e[k] * e[k]);
            turn.add(row, phase[k - first], e[k] * e[k]);
        }
        Optional<NormalEquations.Solution> d = decay.solve(), p = turn.solve();
        if (d.isEmpty() || p.isEmpty() || d.get().value(1) >= 0) return Optional.empty();
        double sum = 0;
        int count = last - first + 1;
        for (int k = first; k <= last; k++) {
            double left = Math.log(e[k]) - d.get().value(0) - d.get().value(1) * (k * z.interval() - middle);
            sum += e[k] * e[k] * left * left;
        }
        double t = StudentT.at95(count / 2.0) / Estimate.NORMAL_95; // the filter joins neighbours two by two
        double sigma = Math.sqrt(2 * sum / Math.max(1, count - 2)) * t;
        double f = z.mixedWith() + p.get().value(1) / (2 * Math.PI);
        Estimate rate =
                Estimate.normal(-d.get().value(1), sigma * Math.sqrt(d.get().cofactor(1, 1)));
        if (rate.low() <= 0) return Optional.empty();
        Estimate frequency = Estimate.normal(f, sigma * Math.sqrt(p.get().cofactor(1, 1)) / (2 * Math.PI));
        return Optional.of(new RingDown(frequency, rate.map(r -> Math.PI * f / r)));
    }
}
