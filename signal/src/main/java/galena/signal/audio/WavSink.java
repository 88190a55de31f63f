package galena.signal.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a WAV file of one or two channels in plain PCM, in blocks. Rounding is dithered by a triangle two steps wide, which leaves
 * a steady hiss in place of distortion that follows the signal (S. P. Lipshitz, R. A. Wannamaker and J. Vanderkooy, J. Audio Eng.
 * Soc. 40 (1992) 355); the dither is the same every time. What is written stands under a temporary name beside the target until
 * it is {@link #finish}ed, so that an interrupted run leaves no half file. One thread.
 */
public final class WavSink implements AutoCloseable {
    private static final int HEADER = 44;
    private static final int BUFFER = 1 << 16;
    private static final long LARGEST = 0xffffffffL - HEADER;

    private final Path target;
    private final Path part;
    private final FileChannel file;
    private final int channels;
    private final int rate;
    private final int bits;
    private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER).order(ByteOrder.LITTLE_ENDIAN);
    private final double steps;
    private long random = 0x9e3779b97f4a7c15L;
    private long bytes;
    private long cut;
    private boolean finished;

    /**
     * @param target file to be written; replaced when it exists
     * @param channels 1 or 2
     * @param rate frames per second, Hz
     * @param bits 16 or 24
     */
    public WavSink(Path target, int channels, int rate, int bits) throws IOException {
        if (channels < 1 || channels > 2) throw new IllegalArgumentException("1 or 2 channels, not " + channels);
        if (bits != 16 && bits != 24) throw new IllegalArgumentException("16 or 24 bits, not " + bits);
        if (rate < 1) throw new IllegalArgumentException("a rate is above zero, not " + rate + " Hz");
        this.target = target.toAbsolutePath();
        this.channels = channels;
        this.rate = rate;
        this.bits = bits;
        steps = bits == 16 ? 32768 : 8388608;
        Path folder = this.target.getParent();
        part = Files.createTempFile(folder, String.valueOf(target.getFileName()), ".part");
        file = FileChannel.open(part, StandardOpenOption.WRITE);
        header();
    }

    private void header() throws IOException {
        ByteBuffer h = ByteBuffer.allocate(HEADER).order(ByteOrder.LITTLE_ENDIAN);
        int frame = channels * bits / 8;
        h.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt((int) (HEADER - 8 + bytes + (bytes & 1)));
        h.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
        h.putShort((short) 1).putShort((short) channels).putInt(rate).putInt(rate * frame);
        h.putShort((short) frame).putShort((short) bits);
        h.put("data".getBytes(StandardCharsets.US_ASCII)).putInt((int) bytes);
        h.flip();
        while (h.hasRemaining()) file.write(h, h.position());
        file.position(HEADER + bytes);
    }

    /** Writes frames of one channel. */
    public void write(double[] samples, int count) throws IOException {
        if (channels != 1) throw new IllegalStateException("this file has two channels");
        for (int k = 0; k < count; k++) put(samples[k]);
    }

    /** Writes frames of two channels. */
    public void write(double[] left, double[] right, int count) throws IOException {
        if (channels != 2) throw new IllegalStateException("this file has one channel");
        for (int k = 0; k < count; k++) {
            put(left[k]);
            put(right[k]);
        }
    }

    private void put(double sample) throws IOException {
        if (buffer.remaining() < 4) drain();
        double dithered = sample * steps + uniform() - uniform();
        double rounded = Math.rint(dithered);
        if (rounded > steps - 1 || rounded < -steps) cut++;
        int value = (int) Math.max(-steps, Math.min(steps - 1, rounded));
        if (bits == 16) {
            buffer.putShort((short) value);
        } else {
            buffer.put((byte) value).put((byte) (value >> 8)).put((byte) (value >> 16));
        }
    }

    /** Even between 0 and 1: G. Marsaglia's xorshift, J. Stat. Software 8 (2003) 14. */
    private double uniform() {
        random ^= random << 13;
        random ^= random >>> 7;
        random ^= random << 17;
        return (random >>> 11) * 0x1p-53;
    }

    private void drain() throws IOException {
        buffer.flip();
        bytes += buffer.remaining();
        if (bytes > LARGEST) throw new IOException("a WAV file holds 4 GB and no more");
        while (buffer.hasRemaining()) file.write(buffer);
        buffer.clear();
    }

    /** Samples that lay beyond full scale and were cut. */
    public long cut() {
        return cut;
    }

    /** Completes the file under its own name. */
    public void finish() throws IOException {
        drain();
        if ((bytes & 1) == 1) {
            ByteBuffer pad = ByteBuffer.allocate(1);
            file.write(pad);
        }
        header();
        file.force(false);
        file.close();
        Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        finished = true;
    }

    /** Without {@link #finish} before, what was written is thrown away. */
    @Override
    public void close() throws IOException {
        file.close();
        if (!finished) Files.deleteIfExists(part);
    }
}
