package galena.signal.stream;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;

/**
 * Header of a WAV stream: the RIFF form, and RF64 with its sizes in ds64. Multimedia Programming Interface and Data
 * Specifications 1.0 (1991), and EBU Tech 3306.
 *
 * @param format of one number
 * @param channels interleaved
 * @param rate frames per second (Hz) as declared
 * @param dataBytes declared length of the samples, or −1 when the writer left it open
 * @param centre tuned frequency (Hz) if a receiver's extra chunk holds one where it is usually kept
 */
public record WavHeader(SampleFormat format, int channels, double rate, long dataBytes, OptionalDouble centre) {
    private static final int PCM = 1;
    private static final int FLOAT = 3;
    private static final int EXTENSIBLE = 0xfffe;
    private static final long OPEN = 0xffffffffL;
    /** A chunk before the samples that is longer than this is no header. */
    private static final long LONGEST_CHUNK = 1 << 26;
    /** A receiver's chunk: two 16-byte system times, then the tuned frequency as a 32-bit integer. Common practice. */
    private static final int CENTRE_AT = 32;

    /** What is wrong with a header, for the caller to say with the file's name. */
    public static final class BadHeader extends IOException {
        public BadHeader(String message) {
            super(message);
        }
    }

    /**
     * Reads up to the first sample; the stream stands there afterwards.
     *
     * @throws BadHeader if this is no WAV, or one of a kind that cannot be read
     */
    public static WavHeader read(InputStream in) throws IOException {
        ByteBuffer riff = take(in, 12);
        String form = name(riff, 0);
        if (!(form.equals("RIFF") || form.equals("RF64")) || !name(riff, 8).equals("WAVE")) {
            throw new BadHeader("it does not begin with RIFF....WAVE");
        }
        ByteBuffer format = null;
        long longSize = -1;
        OptionalDouble centre = OptionalDouble.empty();
        while (true) {
            ByteBuffer chunk = take(in, 8);
            String id = name(chunk, 0);
            long size = chunk.getInt(4) & 0xffffffffL;
            if (id.equals("data")) {
                if (format == null) throw new BadHeader("its samples come before their format");
                long bytes = size == OPEN ? longSize : size == 0 ? -1 : size;
                return decode(format, bytes, centre);
            }
            if (size > LONGEST_CHUNK) throw new BadHeader("its chunk \"" + id + "\" claims " + size + " bytes");
            ByteBuffer body = take(in, (int) (size + (size & 1)));
            if (id.equals("fmt ")) format = body;
            if (id.equals("ds64") && size >= 16) longSize = body.getLong(8);
            if (id.equals("auxi") && size >= CENTRE_AT + 4) {
                double hertz = body.getInt(CENTRE_AT) & 0xffffffffL;
                if (hertz > 0) centre = OptionalDouble.of(hertz);
            }
        }
    }

    private static WavHeader decode(ByteBuffer format, long bytes, OptionalDouble centre) throws BadHeader {
        if (format.limit() < 16) throw new BadHeader("its format chunk is only " + format.limit() + " bytes");
        int code = format.getShort(0) & 0xffff, channels = format.getShort(2) & 0xffff;
        double rate = format.getInt(4) & 0xffffffffL;
        int bits = format.getShort(14) & 0xffff;
        if (code == EXTENSIBLE && format.limit() >= 26) code = format.getShort(24) & 0xffff;
        if (channels < 1 || channels > 64) throw new BadHeader("it declares " + channels + " channels");
        if (rate < 1) throw new BadHeader("it declares no sample rate");
        int frame = format.getShort(12) & 0xffff;
        if (frame != 0 && frame != channels * ((bits + 7) / 8)) {
            throw new BadHeader(
                    "its frame of " + frame + " bytes does not fit " + channels + " channels of " + bits + " bits");
        }
        return new WavHeader(format(code, bits), channels, rate, bytes, centre);
    }

    private static SampleFormat format(int code, int bits) throws BadHeader {
        if (code == PCM) {
            if (bits == 8) return SampleFormat.U8_WAV;
            if (bits == 16) return SampleFormat.S16;
            if (bits == 24) return SampleFormat.S24;
            if (bits == 32) return SampleFormat.S32;
        }
        if (code == FLOAT && bits == 32) return SampleFormat.F32;
        if (code == FLOAT && bits == 64) return SampleFormat.F64;
        throw new BadHeader("it is coded as kind " + code + " with " + bits
                + " bits; plain 8, 16, 24 or 32 bit integers and 32 or 64 bit floats are read");
    }

    private static ByteBuffer take(InputStream in, int count) throws IOException {
        byte[] bytes = in.readNBytes(count);
        if (bytes.length < count) throw new EOFException();
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static String name(ByteBuffer bytes, int at) {
        byte[] four = new byte[4];
        bytes.get(at, four);
        return new String(four, StandardCharsets.ISO_8859_1);
    }
}
