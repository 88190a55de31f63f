package galena.packet.schematic;

/** How much room text takes. Widths are those of a wide sans-serif face, so that narrower ones fit too. */
final class Lettering {
    private Lettering() {}

    static final int NAME_SIZE = 12;
    static final int VALUE_SIZE = 11;
    /** Letter width over letter size. */
    private static final double WIDE = 0.64;

    private static final double ASCENT = 0.76;
    private static final double DESCENT = 0.24;

    static int width(String text, int size) {
        return (int) Math.ceil(text.codePointCount(0, text.length()) * size * WIDE);
    }

    /** The box of a line of text whose anchor and base line are at (x, y). */
    static Box box(String text, int size, int x, int y, Anchor anchor) {
        int width = width(text, size);
        int left =
                switch (anchor) {
                    case START -> x;
                    case MIDDLE -> x - width / 2;
                    case END -> x - width;
                };
        return new Box(left, y - (int) Math.round(size * ASCENT), left + width, y + (int) Math.ceil(size * DESCENT));
    }

    /** Which end of a text stands at its place. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }
}
