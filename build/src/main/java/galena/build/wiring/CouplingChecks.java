package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.Coupled;
import galena.build.folder.Overlay;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Checks that couplings of three coils or more can exist together: the matrix of k, ones on its diagonal, must be positive
 * definite, else the field of some currents would hold negative energy. Two coils pass by |k| below 1 alone.
 */
final class CouplingChecks {
    /** Pivots below this are zero for the equations: coils that share all flux. */
    private static final double SMALLEST_PIVOT = 1e-9;

    private CouplingChecks() {}

    static void check(Build build, Overlay overlay) throws BadInputException {
        List<Coupled> couplings = CircuitOf.inForce(build, overlay);
        Set<String> coils = new LinkedHashSet<>();
        couplings.forEach(c -> coils.addAll(List.of(c.first(), c.second())));
        List<String> names = new ArrayList<>(coils);
        int failed = firstFailure(matrix(names, couplings));
        if (failed < 0) return;
        String path = "couplings";
        throw new BadInputException(new Problem(
                build.place(path),
                path,
                "the couplings of " + names.get(failed) + " with " + String.join(", ", names.subList(0, failed))
                        + " can't exist together",
                "Coils that both couple closely with a third couple closely with each other.",
                "Measure the pairs again, or lower one k."));
    }

    private static double[][] matrix(List<String> names, List<Coupled> couplings) {
        double[][] k = new double[names.size()][names.size()];
        for (int i = 0; i < k.length; i++) k[i][i] = 1;
        for (Coupled coupled : couplings) {
            int i = names.indexOf(coupled.first());
            int j = names.indexOf(coupled.second());
            k[i][j] = coupled.k().value();
            k[j][i] = coupled.k().value();
        }
        return k;
    }

    /** Cholesky's factorisation: the first row whose pivot isn't positive, or −1. The matrix is overwritten. */
    private static int firstFailure(double[][] a) {
        for (int j = 0; j < a.length; j++) {
            for (int i = 0; i < j; i++) a[j][j] -= a[j][i] * a[j][i];
            if (!(a[j][j] > SMALLEST_PIVOT)) return j;
            a[j][j] = Math.sqrt(a[j][j]);
            for (int row = j + 1; row < a.length; row++) {
                for (int i = 0; i < j; i++) a[row][j] -= a[row][i] * a[j][i];
                a[row][j] /= a[j][j];
            }
        }
        return -1;
    }
}
