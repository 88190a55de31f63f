package galena.signal.stream;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** How one number is stored. Integers are scaled to ±1 at full scale. */
public enum SampleFormat {
    /** Unsigned byte around 127.5, as receivers without a header write it. */
    U8(1, 8, false),
    /** Unsigned byte around 128, as WAV defines it. */
    U8_WAV(1, 8, false),
    S8(1, 8, false),
    S16(2, 16, false),
    /** Three bytes, packed. */
    S24(3, 24, false),
    S32(4, 32, false),
    F32(4, 24, true),
    F64(8, 53, true);

    private final int bytes;
    private final int bits;
    private final boolean floating;

    SampleFormat(int bytes, int bits, boolean floating) {
        this.bytes = bytes;
        this.bits = bits;
        this.floating = floating;
    }

    /** Bytes per number. */
    public int bytes() {
        return bytes;
    }

    /** Bits that carry the value. */
    public int bits() {
        return bits;
    }

    /** Whether the numbers are floating point, which may hold what is not a number. */
    public boolean isFloating() {
        return floating;
    }

    /**
     * Decodes numbers that follow each other.
     *
     * @param source read, in the byte order it is set to
     * @param at position of the first byte
     * @param count of numbers
     * @param out written from element 0
     */
    public void decode(ByteBuffer source, int at, int count, double[] out) {
        switch (this) {
            case U8 -> {
                for (int k = 0; k < count; k++) out[k] = ((source.get(at + k) & 0xff) - 127.5) / 127.5;
            }
            case U8_WAV -> {
                for (int k = 0; k < count; k++) out[k] = ((source.get(at + k) & 0xff) - 128) / 128.0;
            }
            case S8 -> {
                for (int k = 0; k < count; k++) out[k] = source.get(at + k) / 128.0;
            }
            case S16 -> {
                for (int k = 0; k < count; k++) out[k] = source.getShort(at + 2 * k) / 32768.0;
            }
            case S24 -> decode24(source, at, count, out);
            case S32 -> {
                for (int k = 0; k < count; k++) out[k] = source.getInt(at + 4 * k) / 2147483648.0;
            }
            case F32 -> {
                for (int k = 0; k < count; k++) out[k] = source.getFloat(at + 4 * k);
            }
            case F64 -> {
                for (int k = 0; k < count; k++) out[k] = source.getDouble(at + 8 * k);
            }
        }
    }

    private static void decode24(ByteBuffer source, int at, int count, double[] out) {
        boolean little = source.order() == ByteOrder.LITTLE_ENDIAN;
        for (int k = 0; k < count; k++) {
            int p = at + 3 * k;
            int high = source.get(little ? p + 2 : p), middle = source.get(p + 1) & 0xff;
            int low = source.get(little ? p : p + 2) & 0xff;
            out[k] = (high << 16 | middle << 8 | low) / 8388608.0;
        }
    }
}
