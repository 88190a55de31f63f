package galena.packet.schematic;

/**
 * A symbol turned: x' = a·x + c·y, y' = b·x + d·y, as SVG's matrix has it.
 */
record Turn(int a, int b, int c, int d) {
    static final Turn UPRIGHT = new Turn(1, 0, 0, 1);
    static final Turn MIRRORED = new Turn(-1, 0, 0, 1);
    static final Turn FLIPPED = new Turn(1, 0, 0, -1);
    static final Turn BOTH = new Turn(-1, 0, 0, -1);
    /** The upper pin to the left, what stood on the right on top. */
    static final Turn LYING = new Turn(0, -1, 1, 0);
    /** The upper pin to the right, what stood on the right on top. */
    static final Turn LYING_BACK = new Turn(0, -1, -1, 0);

    int x(int x, int y) {
        return a * x + c * y;
    }

    int y(int x, int y) {
        return b * x + d * y;
    }

    Box box(Box box) {
        return Box.around(
                x(box.left(), box.top()),
                y(box.left(), box.top()),
                x(box.right(), box.bottom()),
                y(box.right(), box.bottom()));
    }

    Glyph.Side side(Glyph.Side side) {
        return switch (side) {
            case ON -> side;
            case N -> facing(0, -1);
            case S -> facing(0, 1);
            case E -> facing(1, 0);
            case W -> facing(-1, 0);
        };
    }

    private Glyph.Side facing(int x, int y) {
        int dx = x(x, y), dy = y(x, y);
        if (dy != 0) return dy < 0 ? Glyph.Side.N : Glyph.Side.S;
        return dx < 0 ? Glyph.Side.W : Glyph.Side.E;
    }
}
