package galena.bench.capture;

import galena.signal.stream.SampleFormat;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Interleaved frames of numbers into a store, block by block. */
final class FrameReader {
    private static final int FRAMES = 1 << 14;

    private final SampleFormat format;
    private final int channels;
    private final ByteOrder order;
    private long frames;
    private long notFinite;
    private int left;

    FrameReader(SampleFormat format, int channels, ByteOrder order) {
        this.format = format;
        this.channels = channels;
        this.order = order;
    }

    /**
     * Reads until the stream or the given length ends.
     *
     * @param bytes to read at most, negative for all
     */
    void read(InputStream in, long bytes, SampleStore store) throws IOException {
        int frame = format.bytes() * channels;
        byte[] raw = new byte[FRAMES * frame];
        ByteBuffer buffer = ByteBuffer.wrap(raw).order(order);
        double[] values = new double[FRAMES * channels];
        long remaining = bytes < 0 ? Long.MAX_VALUE : bytes;
        while (remaining > 0) {
            int got = in.readNBytes(raw, 0, (int) Math.min(raw.length, remaining));
            remaining -= got;
            int whole = got / frame;
            format.decode(buffer, 0, whole * channels, values);
            for (int k = 0; k < whole; k++) {
                if (format.isFloating() && !finite(values, k * channels)) {
                    notFinite++;
                    store.breakHere();
                } else {
                    store.add(values, k * channels);
                }
            }
            frames += whole;
            left = got % frame;
            if (got < raw.length) break;
        }
    }

    private boolean finite(double[] values, int from) {
        for (int c = 0; c < channels; c++) if (!Double.isFinite(values[from + c])) return false;
        return true;
    }

    long frames() {
        return frames;
    }

    /** Frames that hold something else than finite numbers. */
    long notFinite() {
        return notFinite;
    }

    /** Bytes at the end that make no whole frame. */
    int bytesLeft() {
        return left;
    }
}
