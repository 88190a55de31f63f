package galena.signal.stream;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;

/**
 * Tells headerless IQ formats apart by the histograms of their bytes. Floats have exponents of a narrow range; 16-bit
 * integers have low bytes that are spread out and high bytes that are not; single bytes have the same histogram at even
 * and odd places, heaped around 127.5 or around 0. Where the evidence is thin there is no guess.
 */
public final class IqGuess {
    private static final int FEWEST = 4096;
    /** Difference of entropy (bits) between byte places that tells two-byte numbers from single bytes. */
    private static final double PLACES_DIFFER = 0.75;
    /** The same for strong signals, whose high bytes are spread out too; the low ones are then uniform. */
    private static final double PLACES_DIFFER_SLIGHTLY = 0.08;

    private static final double UNIFORM = 7.9;

    private IqGuess() {}

    /** The format of interleaved little-endian IQ, from its first bytes; empty if they do not tell. */
    public static Optional<SampleFormat> of(byte[] head) {
        if (head.length < FEWEST) return Optional.empty();
        if (looksFloating(head)) return Optional.of(SampleFormat.F32);
        double[] even = histogram(head, 0), odd = histogram(head, 1);
        double apart = entropy(even) - entropy(odd);
        boolean lowBytes = entropy(even) > UNIFORM && apart > PLACES_DIFFER_SLIGHTLY;
        if (apart > PLACES_DIFFER || lowBytes) return Optional.of(SampleFormat.S16);
        if (Math.abs(entropy(even) - entropy(odd)) > PLACES_DIFFER / 2) return Optional.empty();
        double middle = mass(even, 64, 192) + mass(odd, 64, 192), ends = 2 - middle;
        if (entropy(even) > UNIFORM) return Optional.empty(); // flat: any format, or not samples at all
        if (middle > 1.3) return Optional.of(SampleFormat.U8);
        if (ends > 1.3) return Optional.of(SampleFormat.S8);
        return Optional.empty();
    }

    private static boolean looksFloating(byte[] head) {
        ByteBuffer buffer = ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN);
        int count = head.length / 4, plausible = 0;
        for (int k = 0; k < count; k++) {
            float x = Math.abs(buffer.getFloat(4 * k));
            if (x == 0 || (x > 1e-9f && x < 1e6f)) plausible++;
        }
        // small 16-bit pairs also decode to plausible floats, but never with mantissas this well spread
        return plausible > 0.999 * count && entropy(histogram(head, 0, 4)) > 4;
    }

    private static double[] histogram(byte[] bytes, int place) {
        return histogram(bytes, place, 2);
    }

    private static double[] histogram(byte[] bytes, int place, int stride) {
        double[] share = new double[256];
        int count = 0;
        for (int k = place; k < bytes.length; k += stride, count++) share[bytes[k] & 0xff]++;
        for (int b = 0; b < 256; b++) share[b] /= count;
        return share;
    }

    private static double entropy(double[] share) {
        double bits = 0;
        for (double p : share) if (p > 0) bits -= p * Math.log(p) / Math.log(2);
        return bits;
    }

    private static double mass(double[] share, int from, int to) {
        double sum = 0;
        for (int b = from; b < to; b++) sum += share[b];
        return sum;
    }
}
