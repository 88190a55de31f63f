package galena.bench.capture;

import java.nio.charset.StandardCharsets;

/**
 * Numbers in bytes. The fast path is exact: up to 15 digits and a power of ten up to 22 are both exact in a double, so one
 * multiplication or division rounds once (W. D. Clinger, PLDI 1990). Everything else goes to the JDK's parser, or to the
 * reading of engineering suffixes.
 */
final class Numbers {
    private static final double[] TEN = new double[23];

    static {
        TEN[0] = 1;
        for (int k = 1; k < TEN.length; k++) TEN[k] = TEN[k - 1] * 10;
    }

    private static final long EXACT = 1_000_000_000_000_000L;

    private Numbers() {}

    /**
     * The number in a cell, or NaN when it holds none: for an empty cell, text, or the words for infinite and undefined.
     *
     * @param b read from {@code from} to before {@code to}
     * @param decimal mark
     * @param thousands mark between groups of three, or 0
     */
    static double parse(byte[] b, int from, int to, byte decimal, byte thousands) {
        int p = from, end = to;
        while (p < end && (b[p] <= ' ' || b[p] == '"') && b[p] >= 0) p++;
        while (p < end && (b[end - 1] <= ' ' || b[end - 1] == '"') && b[end - 1] >= 0) end--;
        if (p == end) return Double.NaN;
        int start = p;
        boolean negative = b[p] == '-';
        if (negative || b[p] == '+') p++;
        long mantissa = 0;
        int digits = 0, scale = 0;
        boolean point = false;
        for (; p < end; p++) {
            int c = b[p];
            if (c >= '0' && c <= '9') {
                if (mantissa >= EXACT / 10) return slow(b, start, end, decimal, thousands);
                mantissa = mantissa * 10 + (c - '0');
                digits++;
                if (point) scale--;
            } else if (c == decimal && !point) {
                point = true;
            } else if (c == thousands && thousands != 0 && !point && digits > 0) {
                return slow(b, start, end, decimal, thousands);
            } else {
                break;
            }
        }
        if (digits == 0) return Double.NaN;
        if (p < end && (b[p] == 'e' || b[p] == 'E')) {
            int exponent = exponent(b, p + 1, end);
            if (exponent == Integer.MIN_VALUE) return slow(b, start, end, decimal, thousands);
            scale += exponent;
            p = end;
        }
        if (p < end || scale > 22 || scale < -22) return slow(b, start, end, decimal, thousands);
        double value = scale < 0 ? mantissa / TEN[-scale] : mantissa * TEN[scale];
        return negative ? -value : value;
    }

    private static int exponent(byte[] b, int from, int end) {
        int p = from;
        boolean negative = p < end && b[p] == '-';
        if (negative || (p < end && b[p] == '+')) p++;
        if (p == end || end - p > 4) return Integer.MIN_VALUE;
        int value = 0;
        for (; p < end; p++) {
            if (b[p] < '0' || b[p] > '9') return Integer.MIN_VALUE;
            value = value * 10 + (b[p] - '0');
        }
        return negative ? -value : value;
    }

    private static double slow(byte[] b, int from, int to, byte decimal, byte thousands) {
        if (to - from > 64) return Double.NaN;
        String text = new String(b, from, to - from, StandardCharsets.UTF_8);
        if (thousands != 0) {
            String mark = java.util.regex.Pattern.quote(String.valueOf((char) thousands));
            String point = java.util.regex.Pattern.quote(String.valueOf((char) decimal));
            if (text.matches("[-+]?[1-9]\\d{0,2}(" + mark + "\\d{3})+(" + point + "\\d*)?")) {
                text = text.replace(String.valueOf((char) thousands), "");
            }
        }
        if (decimal == ',') {
            if (text.indexOf('.') >= 0) return Double.NaN;
            text = text.replace(',', '.');
        } else if (text.indexOf(',') >= 0) {
            return Double.NaN;
        }
        return Suffixed.read(text)
                .filter(Suffixed::isSample)
                .map(Suffixed::value)
                .orElse(Double.NaN);
    }
}
