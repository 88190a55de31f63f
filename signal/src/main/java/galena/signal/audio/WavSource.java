package galena.signal.audio;

import galena.signal.stream.SampleFormat;
import galena.signal.stream.WavHeader;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

/** A WAV file read in blocks. Samples that are not numbers are read as silence and counted. One thread. */
public final class WavSource implements Programme, AutoCloseable {
    private static final int BUFFER = 1 << 16;

    private final InputStream in;
    private final WavHeader header;
    private final byte[] bytes;
    private final ByteBuffer buffer;
    private final double[] numbers;
    private final int frame;
    private long left;
    private long frames;
    private long notNumbers;

    private WavSource(InputStream in, WavHeader header) {
        this.in = in;
        this.header = header;
        frame = header.channels() * header.format().bytes();
        bytes = new byte[BUFFER / frame * frame];
        buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        numbers = new double[bytes.length / header.format().bytes()];
        left = header.dataBytes() < 0 ? Long.MAX_VALUE : header.dataBytes();
    }

    /**
     * @throws WavHeader.BadHeader when it is no WAV, or of a kind that is not read
     * @throws IOException when it cannot be opened
     */
    public static WavSource open(Path file) throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(file), BUFFER);
        try {
            return new WavSource(in, WavHeader.read(in));
        } catch (EOFException cut) {
            in.close();
            throw new WavHeader.BadHeader("it ends within its header");
        } catch (IOException bad) {
            in.close();
            throw bad;
        }
    }

    @Override
    public double rate() {
        return header.rate();
    }

    public int channels() {
        return header.channels();
    }

    public SampleFormat format() {
        return header.format();
    }

    /** Frames that the header promises. */
    @Override
    public long length() {
        return header.dataBytes() < 0 ? -1 : header.dataBytes() / frame;
    }

    /** Frames read so far. */
    public long frames() {
        return frames;
    }

    /** Samples read so far that are not numbers. */
    public long notNumbers() {
        return notNumbers;
    }

    /** The largest block that {@link #read} fills. */
    public int largestBlock() {
        return bytes.length / frame;
    }

    /** Channels beyond the second are passed over. */
    @Override
    public int read(double[] left, double[] right, int most) throws IOException {
        int wanted = (int) Math.min(Math.min(most, largestBlock()), this.left / frame);
        if (wanted <= 0) return 0;
        int got = in.readNBytes(bytes, 0, wanted * frame) / frame, channels = header.channels();
        this.left -= (long) got * frame;
        header.format().decode(buffer, 0, got * channels, numbers);
        for (int k = 0; k < got; k++) {
            left[k] = number(numbers[k * channels]);
            right[k] = channels > 1 ? number(numbers[k * channels + 1]) : left[k];
        }
        frames += got;
        return got;
    }

    private double number(double sample) {
        if (Double.isFinite(sample)) return sample;
        notNumbers++;
        return 0;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
