package galena.build.fault;

import galena.build.fault.FaultStudy.Case;
import galena.build.fault.Symptoms.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The order in which readings find a fault of one stage. Each question is the reading that leaves least in doubt on average
 * (information gain after J. R. Quinlan, Machine Learning 1 (1986) 81), answers apart from one another by more than tolerances
 * and meters can blur; what no reading tells apart stays together.
 *
 * @param stage whose faults are looked for
 * @param root first question
 * @param betrayals by fault, the one reading that tells most
 * @param unseen faults that move no reading out of its window
 * @param unsolved faults of which nothing can be said, with the reason
 */
public record FaultTree(Stage stage, Node root, List<Betrayal> betrayals, List<Fault> unseen, List<Unsolved> unsolved) {
    public FaultTree {
        betrayals = List.copyOf(betrayals);
        unseen = List.copyOf(unseen);
        unsolved = List.copyOf(unsolved);
    }

    /** A question, or where questions end. */
    public sealed interface Node {}

    /**
     * @param reading to take
     * @param branches by rising reading; "none" first
     */
    public record Ask(Reading reading, List<Branch> branches) implements Node {
        public Ask {
            branches = List.copyOf(branches);
        }
    }

    /**
     * @param window of the reading; empty where there is nothing to read
     * @param sound whether the stage as it should be reads so
     * @param then what follows
     */
    public record Branch(Optional<Window> window, boolean sound, Node then) {}

    /** Both ends in the reading's unit. */
    public record Window(double low, double high) {}

    /**
     * @param faults that may be it; empty when only the sound stage is left
     * @param sound whether the stage may be sound
     */
    public record Suspects(List<Fault> faults, boolean sound) implements Node {
        public Suspects {
            faults = List.copyOf(faults);
        }
    }

    /**
     * @param fault in question
     * @param reading that lies farthest outside its window
     * @param sound what it should be
     * @param found what it is with the fault and typical parts; empty where there is nothing to read
     */
    public record Betrayal(Fault fault, Reading reading, Window sound, OptionalDouble found) {}

    /** A fault of which nothing can be said. @param reason in words */
    public record Unsolved(Fault fault, String reason) {}

    /** One tree for each stage, of the faults whose first suspect belongs to it. */
    public static List<FaultTree> of(FaultStudy study, List<Stage> stages, Windows windows) {
        List<FaultTree> trees = new ArrayList<>();
        Set<Case> left = new LinkedHashSet<>(study.cases());
        for (Stage stage : stages) {
            List<Case> own = left.stream().filter(c -> belongs(c, stage)).toList();
            own.forEach(left::remove);
            if (!own.isEmpty()) trees.add(new TreeGrowing(study, windows, stage).of(own));
        }
        return trees;
    }

    private static boolean belongs(Case one, Stage stage) {
        return stage.parts().contains(one.fault().parts().get(0));
    }

    static boolean isSolved(Case one) {
        return one.symptoms().outcome() != Outcome.UNSOLVED;
    }
}
