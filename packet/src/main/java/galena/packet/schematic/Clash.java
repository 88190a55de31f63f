package galena.packet.schematic;

/**
 * How much a reader would dislike two shapes beside one another. Shapes lie in flat arrays, {@value #STRIDE} numbers each: what it is,
 * its net, then left, top, right and bottom.
 */
final class Clash {
    static final int BODY = 0;
    static final int LABEL = 1;
    static final int WIRE = 2;
    static final int STRIDE = 6;

    /** Two things on one place: the drawing can't be read there. */
    static final double COLLISION = 40;

    private static final double CROSSING = 15;
    private static final double CROWDED = 4;
    private static final double SHORT = 60;

    private Clash() {}

    /** Whether two shapes come nearer than a margin. */
    static boolean near(int[] a, int i, int[] b, int j, int margin) {
        return a[i + 2] < b[j + 4] + margin
                && b[j + 2] < a[i + 4] + margin
                && a[i + 3] < b[j + 5] + margin
                && b[j + 3] < a[i + 5] + margin;
    }

    /** Of a shape of one thing and one of another. */
    static double of(int[] a, int i, int[] b, int j) {
        int kinds = a[i] + b[j];
        if (a[i] != WIRE && b[j] != WIRE) {
            int margin = kinds == LABEL + LABEL ? 5 : 4;
            return near(a, i, b, j, margin) ? COLLISION + 0.02 * shared(a, i, b, j, margin) : 0;
        }
        if (a[i] != WIRE || b[j] != WIRE) return near(a, i, b, j, kinds == WIRE ? 5 : 4) ? COLLISION : 0;
        return a[i + 1] == b[j + 1] ? alongside(a, i, b, j) : wires(a, i, b, j);
    }

    /** Two upright wires of one net: neither in line nor well apart looks like a slip of the pen. */
    private static double alongside(int[] a, int i, int[] b, int j) {
        int apart = Math.abs(a[i + 2] - b[j + 2]);
        boolean upright = a[i + 2] == a[i + 4] && b[j + 2] == b[j + 4];
        return upright && apart > 0 && apart < 20 && near(a, i, b, j, 12) ? CROWDED : 0;
    }

    private static double shared(int[] a, int i, int[] b, int j, int margin) {
        int across = Math.min(a[i + 4], b[j + 4]) - Math.max(a[i + 2], b[j + 2]) + margin;
        int down = Math.min(a[i + 5], b[j + 5]) - Math.max(a[i + 3], b[j + 3]) + margin;
        return (double) across * down;
    }

    /** Two wires of different nets: crossing, or so near that they seem joined. */
    static double wires(int[] a, int i, int[] b, int j) {
        boolean levelA = a[i + 3] == a[i + 5], levelB = b[j + 3] == b[j + 5];
        if (levelA == levelB) return near(a, i, b, j, 10) ? SHORT : 0;
        int[] level = levelA ? a : b, upright = levelA ? b : a;
        int l = levelA ? i : j, u = levelA ? j : i;
        int at = upright[u + 2], line = level[l + 3];
        boolean inside = at > level[l + 2] + 7
                && at < level[l + 4] - 7
                && line > upright[u + 3] + 7
                && line < upright[u + 5] - 7;
        if (inside) return CROSSING;
        return near(a, i, b, j, 7) ? SHORT : 0;
    }
}
