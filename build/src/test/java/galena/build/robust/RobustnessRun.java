package galena.build.robust;

import galena.build.source.BadInputException;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Runs many draws and tallies them; {@code docs/robustness.md} quotes what {@link #main} printed. */
final class RobustnessRun {
    private RobustnessRun() {}

    /**
     * @param arguments first seed of random builds, how many, first seed of spoilt builds, how many, and the folder for those
     *     without an answer
     */
    public static void main(String[] arguments) throws IOException {
        Path folder = arguments.length > 4 ? Path.of(arguments[4]) : null;
        System.out.println(
                "random builds: " + random(Long.parseLong(arguments[0]), Integer.parseInt(arguments[1]), folder));
        System.out.println(
                "spoilt builds: " + spoilt(Long.parseLong(arguments[2]), Integer.parseInt(arguments[3]), folder));
    }

    static Tally random(long from, int many, @Nullable Path folder) throws IOException {
        Tally tally = new Tally();
        for (long seed = from; seed < from + many; seed++) {
            RandomBuild drawn = RandomBuild.draw(seed);
            tally.count("random-" + seed, drawn.toString(), drawn.kept(), trial(drawn), folder);
        }
        return tally;
    }

    private static Trial trial(RandomBuild drawn) {
        try {
            return Trial.of(drawn.circuit());
        } catch (BadInputException fault) {
            return new Trial(Trial.End.FAULT, false, fault.getMessage(), 0);
        }
    }

    static Tally spoilt(long from, int many, @Nullable Path folder) throws IOException {
        Tally tally = new Tally();
        for (long seed = from; seed < from + many; seed++) {
            SpoiltBuild drawn = SpoiltBuild.draw(seed);
            tally.count("spoilt-" + seed, drawn.toString(), drawn.kept(), drawn.trial(), folder);
        }
        return tally;
    }
}
