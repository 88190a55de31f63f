package galena.packet.schematic;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * Searches for the board that a reader dislikes least: small moves are tried at random; a worse board is kept with a chance that
 * falls as the search cools. S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Science 220 (1983) 671. The seed is fixed.
 */
final class Annealing {
    private static final double HOT = 12;

    /** Warm enough to move neighbourhoods, not to forget where the stages stand. */
    private static final double WARM = 4;

    private static final double COLD = 0.4;
    private static final int GRID = 10;

    /** Tries between two looks at whether to stop: some ten milliseconds. */
    private static final int BETWEEN_LOOKS = 2048;

    private final Board board;
    private final SplittableRandom random;
    private final BooleanSupplier stop;
    private final boolean[] touched;
    private final int[] list;
    private int count;
    /** Dislike of every pair as the board stands, and of the touched things after a move. */
    private final double[][] pairs;

    private final double[][] tried;
    private final double[] singles;
    private final int[] oldX;
    private final int[] oldY;
    private final int[] oldVariant;
    private final int[] oldRow;

    private Annealing(Board board, long seed, BooleanSupplier stop) {
        this.stop = stop;
        this.board = board;
        random = new SplittableRandom(seed);
        touched = new boolean[board.things];
        list = new int[board.things];
        pairs = new double[board.things][board.things];
        tried = new double[board.things][board.things];
        singles = new double[board.things];
        oldX = new int[board.elements];
        oldY = new int[board.elements];
        oldVariant = new int[board.elements];
        oldRow = new int[board.row.length];
    }

    /** @param effort tries per thing on the board */
    static Board search(Netlist netlist, double severity, long seed, int effort, BooleanSupplier stop) {
        Board board = new Board(netlist, severity);
        if (board.elements == 0) return board;
        Annealing annealing = new Annealing(board, seed, stop);
        annealing.scatter();
        return annealing.cool(effort, HOT);
    }

    /** Warms a settled board and cools it again. */
    static Board improve(Board settled, long seed, int effort, BooleanSupplier stop) {
        Board board = new Board(settled.netlist, settled.severity);
        if (board.elements == 0) return board;
        board.take(settled);
        Annealing annealing = new Annealing(board, seed, stop);
        annealing.begin();
        Board better = annealing.cool(effort, WARM);
        return better.total() < settled.total() ? better : settled;
    }

    /** Nets at their standing, elements between their nets, stages from left to right. */
    private void scatter() {
        for (int net = Netlist.RAIL + 1; net < board.row.length; net++) board.row[net] = board.wantedRow(net);
        int[] stage = new int[board.elements];
        for (int round = 0; round < board.elements; round++)
            for (int[] edge : board.flow()) stage[edge[1]] = Math.min(6, Math.max(stage[edge[1]], stage[edge[0]] + 1));
        for (int e = 0; e < board.elements; e++) {
            board.x[e] = 200 * stage[e] + GRID * random.nextInt(60);
            board.variant[e] = random.nextInt(board.variants[e].length);
            List<Integer> nets = board.element(e).nets();
            double mean = nets.stream()
                    .mapToInt(n -> n == Netlist.GROUND ? board.lowestRow + 1 : board.row[n])
                    .average()
                    .orElse(1);
            board.y[e] = (int) Math.round(2 * mean);
            settle(e);
        }
        begin();
    }

    private void begin() {
        board.refreshAll();
        count = 0;
        for (int t = 0; t < board.things; t++) list[count++] = t;
        Arrays.fill(touched, true);
        costAfter();
        keep();
    }

    /** Elements on lines have even half rows, others odd ones; a test point stands on its own net's line. */
    private void settle(int e) {
        Glyph glyph = board.element(e).glyph();
        if (glyph == Glyph.TEST_POINT) {
            int net = board.element(e).nets().get(0);
            board.y[e] = net == Netlist.GROUND ? 2 * board.lowestRow : 2 * board.row[net];
            return;
        }
        boolean even = board.onLine(e, board.variant[e]);
        if ((board.y[e] & 1) == (even ? 1 : 0)) board.y[e]++;
        board.y[e] = Math.max(even ? 2 : 1, Math.min(2 * board.lowestRow + (even ? 0 : 1), board.y[e]));
    }

    private Board cool(int effort, double hot) {
        Board best = new Board(board.netlist, board.severity);
        double now = board.total(), lowest = now;
        best.take(board);
        long tries = (long) effort * board.things;
        // StrictMath and products: the same on every machine, or the same build would not give the same drawing.
        double cooling = StrictMath.pow(COLD / hot, 1.0 / tries), heat = hot;
        for (long k = 0; k < tries; k++) {
            heat *= cooling;
            if (k % BETWEEN_LOOKS == 0 && stop.getAsBoolean()) throw new CancellationException("drawing stopped");
            double change = attempt(heat);
            now += change;
            if (now < lowest - 1e-9) {
                lowest = now;
                if (k > tries / 2) best.take(board);
            }
        }
        if (board.total() < best.total()) best.take(board);
        return best;
    }

    /** Makes one move and keeps it or takes it back; the change of cost. */
    private double attempt(double heat) {
        System.arraycopy(board.x, 0, oldX, 0, oldX.length);
        System.arraycopy(board.y, 0, oldY, 0, oldY.length);
        System.arraycopy(board.variant, 0, oldVariant, 0, oldVariant.length);
        System.arraycopy(board.row, 0, oldRow, 0, oldRow.length);
        double before = board.whole();
        move();
        findTouched();
        if (count == 0) return 0;
        before += costBefore();
        refreshTouched();
        double after = board.whole() + costAfter();
        if (after <= before || random.nextDouble() < StrictMath.exp((before - after) / heat)) {
            keep();
            return after - before;
        }
        System.arraycopy(oldX, 0, board.x, 0, oldX.length);
        System.arraycopy(oldY, 0, board.y, 0, oldY.length);
        System.arraycopy(oldVariant, 0, board.variant, 0, oldVariant.length);
        System.arraycopy(oldRow, 0, board.row, 0, oldRow.length);
        refreshTouched();
        return 0;
    }

    private void move() {
        int kind = random.nextInt(100), e = random.nextInt(board.elements);
        if (kind < 40) {
            nudge(e);
        } else if (kind < 55) {
            beside(e);
        } else if (kind < 70) {
            board.variant[e] = random.nextInt(board.variants[e].length);
            settle(e);
        } else if (kind < 84) {
            lift();
        } else if (kind < 90) {
            swap(e, random.nextInt(board.elements));
        } else if (kind < 95) {
            spread();
        } else if (kind < 98) {
            together(e);
        } else {
            raise();
        }
    }

    private void nudge(int e) {
        int reach = random.nextInt(4) == 0 ? 30 : 5;
        board.x[e] += GRID * (random.nextInt(2 * reach + 1) - reach);
        if (random.nextInt(3) == 0) board.y[e] += random.nextInt(5) - 2;
        settle(e);
    }

    /** Straight above or below another, or a column away from it, on a line that its nets lie on. */
    private void beside(int e) {
        int other = random.nextInt(board.elements);
        board.x[e] = board.x[other] + GRID * (random.nextInt(3) == 0 ? random.nextInt(21) - 10 : 0);
        if (random.nextInt(4) == 0) board.variant[e] = random.nextInt(board.variants[e].length);
        int net = board.nets[e][random.nextInt(board.nets[e].length)];
        if (net != Netlist.GROUND) board.y[e] = 2 * board.row[net] + random.nextInt(3) - 1;
        settle(e);
    }

    /** Moves the line of a net, alone or with the elements that sit on it. */
    private void lift() {
        int nets = board.row.length - Netlist.RAIL - 1;
        if (nets == 0) return;
        int net = Netlist.RAIL + 1 + random.nextInt(nets);
        int from = board.row[net];
        int to = Math.max(1, Math.min(board.lowestRow, from + random.nextInt(5) - 2));
        board.row[net] = to;
        boolean along = random.nextInt(3) > 0;
        for (int e : board.on[net]) {
            boolean onIt = board.y[e] == 2 * from;
            if (along && (onIt || (Math.abs(board.y[e] - 2 * from) == 1 && random.nextBoolean())))
                board.y[e] += 2 * (to - from);
            settle(e);
        }
    }

    private void swap(int one, int other) {
        int atX = board.x[one], atY = board.y[one];
        board.x[one] = board.x[other];
        board.y[one] = board.y[other];
        board.x[other] = atX;
        board.y[other] = atY;
        settle(one);
        settle(other);
    }

    /** Opens or closes a gap: everything right of a place moves. */
    private void spread() {
        int from = board.x[random.nextInt(board.elements)] + (random.nextBoolean() ? 1 : 0);
        int by = GRID * (random.nextInt(9) - 5);
        for (int e = 0; e < board.elements; e++) if (board.x[e] >= from) board.x[e] += by;
    }

    /** Moves a neighbourhood as one. */
    private void together(int centre) {
        int reach = GRID * (5 + random.nextInt(20)), rows = 1 + random.nextInt(4);
        int dx = GRID * (random.nextInt(31) - 15), dy = 2 * (random.nextInt(3) - 1);
        int atX = board.x[centre], atY = board.y[centre];
        for (int e = 0; e < board.elements; e++) {
            if (Math.abs(board.x[e] - atX) > reach || Math.abs(board.y[e] - atY) > rows) continue;
            board.x[e] += dx;
            board.y[e] += dy;
            settle(e);
        }
    }

    /** Takes out a row, or puts one in. */
    private void raise() {
        int from = 1 + random.nextInt(board.lowestRow);
        int by = random.nextInt(3) == 0 ? 1 : -1;
        for (int net = Netlist.RAIL + 1; net < board.row.length; net++)
            if (board.row[net] > from || (by > 0 && board.row[net] == from))
                board.row[net] = Math.max(1, Math.min(board.lowestRow, board.row[net] + by));
        for (int e = 0; e < board.elements; e++) {
            if (board.y[e] > 2 * from) board.y[e] += 2 * by;
            settle(e);
        }
    }

    /** What moved, what hangs on it, and the nets of both. */
    private void findTouched() {
        Arrays.fill(touched, false);
        for (int net = 0; net < oldRow.length; net++) {
            if (board.row[net] == oldRow[net]) continue;
            touched[board.elements + net] = true;
            for (int e : board.on[net]) touched[e] = true;
        }
        for (int e = 0; e < board.elements; e++) {
            if (board.x[e] != oldX[e] || board.y[e] != oldY[e] || board.variant[e] != oldVariant[e]) touched[e] = true;
            if (touched[e]) for (int net : board.nets[e]) touched[board.elements + net] = true;
        }
        count = 0;
        for (int t = 0; t < touched.length; t++) if (touched[t]) list[count++] = t;
    }

    private void refreshTouched() {
        for (int i = 0; i < count; i++) board.refresh(list[i]);
    }

    private double costBefore() {
        double cost = 0;
        for (int i = 0; i < count; i++) {
            int t = list[i];
            cost += singles[t];
            double[] row = pairs[t];
            for (int o = 0; o < row.length; o++) if (!touched[o] || o > t) cost += row[o];
        }
        return cost;
    }

    private double costAfter() {
        double cost = 0;
        for (int i = 0; i < count; i++) {
            int t = list[i];
            cost += board.single(t);
            double[] row = tried[t];
            for (int o = 0; o < row.length; o++) {
                if (o == t || (touched[o] && o < t)) continue;
                row[o] = board.pair(t, o);
                cost += row[o];
            }
        }
        return cost;
    }

    private void keep() {
        for (int i = 0; i < count; i++) {
            int t = list[i];
            singles[t] = board.single(t);
            for (int o = 0; o < pairs.length; o++) {
                if (o == t || (touched[o] && o < t)) continue;
                pairs[t][o] = tried[t][o];
                pairs[o][t] = tried[t][o];
            }
        }
    }
}
