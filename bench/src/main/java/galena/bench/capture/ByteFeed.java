package galena.bench.capture;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/** Bytes of a file, unpacked if it is gzip, with a guard against files that unpack to absurd lengths. */
final class ByteFeed {
    /** No capture packs better than this; deflate itself stops at 1032. */
    private static final int ABSURD_RATIO = 400;
    /** Up to this length (bytes) any ratio is let through. */
    private static final long HARMLESS = 64L << 20;

    private static final int BUFFER = 1 << 16;

    private ByteFeed() {}

    /** Opens a file; the caller closes the stream. */
    static InputStream open(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new UnreadableCapture(file.toString(), "there is no such file", "Check the name");
        }
        if (Files.size(file) == 0) {
            throw new UnreadableCapture(file.toString(), "the file is empty", "Save the capture again");
        }
        return unpack(file, Files.newInputStream(file));
    }

    private static InputStream unpack(Path file, InputStream raw) throws IOException {
        PushbackInputStream in = new PushbackInputStream(raw, 4);
        byte[] magic = in.readNBytes(4);
        in.unread(magic);
        if (magic.length == 4 && magic[0] == 'P' && magic[1] == 'K' && magic[2] == 3 && magic[3] == 4) {
            raw.close();
            throw new UnreadableCapture(file.toString(), "this is a zip archive", "Unpack it and name the file inside");
        }
        if (magic.length < 2 || (magic[0] & 0xff) != 0x1f || (magic[1] & 0xff) != 0x8b) return in;
        Counted packed = new Counted(in);
        try {
            return new Guarded(file, packed, new GZIPInputStream(new BufferedInputStream(packed, BUFFER), BUFFER));
        } catch (IOException e) {
            raw.close();
            throw broken(file);
        }
    }

    private static UnreadableCapture broken(Path file) {
        return new UnreadableCapture(
                file.toString(), "the gzip data are damaged or cut short", "Copy the file again, or unpack it by hand");
    }

    /** Decodes UTF-16 to UTF-8; passes everything else through, less a byte order mark. */
    static InputStream textBytes(InputStream in) throws IOException {
        PushbackInputStream ahead = new PushbackInputStream(in, 4);
        byte[] mark = ahead.readNBytes(4);
        int a = at(mark, 0), b = at(mark, 1), c = at(mark, 2), d = at(mark, 3);
        if (a == 0xff && b == 0xfe) return recoded(ahead, mark, 2, StandardCharsets.UTF_16LE);
        if (a == 0xfe && b == 0xff) return recoded(ahead, mark, 2, StandardCharsets.UTF_16BE);
        if (a > 0 && b == 0 && c > 0 && d == 0) return recoded(ahead, mark, 0, StandardCharsets.UTF_16LE);
        if (a == 0 && b > 0 && c == 0 && d > 0) return recoded(ahead, mark, 0, StandardCharsets.UTF_16BE);
        int skip = a == 0xef && b == 0xbb && c == 0xbf ? 3 : 0;
        ahead.unread(mark, skip, mark.length - skip);
        return ahead;
    }

    private static int at(byte[] bytes, int k) {
        return k < bytes.length ? bytes[k] & 0xff : -1;
    }

    private static InputStream recoded(PushbackInputStream in, byte[] mark, int skip, Charset charset)
            throws IOException {
        in.unread(mark, skip, mark.length - skip);
        return new Recoded(new InputStreamReader(in, charset));
    }

    private static final class Recoded extends InputStream {
        private final Reader reader;
        private final char[] chars = new char[8192];
        private byte[] bytes = new byte[0];
        private int at;

        Recoded(Reader reader) {
            this.reader = reader;
        }

        private boolean fill() throws IOException {
            while (at == bytes.length) {
                int count = reader.read(chars);
                if (count < 0) return false;
                bytes = new String(chars, 0, count).getBytes(StandardCharsets.UTF_8);
                at = 0;
            }
            return true;
        }

        @Override
        public int read() throws IOException {
            return fill() ? bytes[at++] & 0xff : -1;
        }

        @Override
        public int read(byte[] out, int from, int length) throws IOException {
            if (length == 0) return 0;
            if (!fill()) return -1;
            int count = Math.min(length, bytes.length - at);
            System.arraycopy(bytes, at, out, from, count);
            at += count;
            return count;
        }

        @Override
        public void close() throws IOException {
            reader.close();
        }
    }

    private static final class Counted extends FilterInputStream {
        private long count;

        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int b = super.read();
            if (b >= 0) count++;
            return b;
        }

        @Override
        public int read(byte[] out, int from, int length) throws IOException {
            int n = super.read(out, from, length);
            if (n > 0) count += n;
            return n;
        }
    }

    private static final class Guarded extends FilterInputStream {
        private final Path file;
        private final Counted packed;
        private long unpacked;

        Guarded(Path file, Counted packed, InputStream in) {
            super(in);
            this.file = file;
            this.packed = packed;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] out, int from, int length) throws IOException {
            int n;
            try {
                n = super.read(out, from, length);
            } catch (java.io.EOFException | ZipException e) {
                throw broken(file);
            }
            if (n > 0) unpacked += n;
            if (unpacked > HARMLESS && unpacked > ABSURD_RATIO * Math.max(1, packed.count)) {
                throw new UnreadableCapture(
                        file.toString(),
                        "it unpacks to more than " + ABSURD_RATIO + " times its size, which no capture does",
                        "Unpack it by hand and look at it if you trust where it comes from");
            }
            return n;
        }
    }
}
