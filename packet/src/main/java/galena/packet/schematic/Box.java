package galena.packet.schematic;

/** A rectangle, y downwards, in drawing units. */
record Box(int left, int top, int right, int bottom) {
    Box {
        if (left > right || top > bottom) throw new IllegalArgumentException("a box has no negative size");
    }

    /** The box around two corners. */
    static Box around(int x1, int y1, int x2, int y2) {
        return new Box(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
    }

    Box shifted(int x, int y) {
        return new Box(left + x, top + y, right + x, bottom + y);
    }

    Box grown(int by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }

    /** Whether they share more than an edge. */
    boolean overlaps(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    Box with(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(top, other.top),
                Math.max(right, other.right),
                Math.max(bottom, other.bottom));
    }
}
