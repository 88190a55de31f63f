package galena.build.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.build.DemoBuild;
import galena.build.fault.FaultStudy.Case;
import galena.build.fault.FaultTree.Ask;
import galena.build.fault.FaultTree.Branch;
import galena.build.fault.FaultTree.Node;
import galena.build.fault.FaultTree.Suspects;
import galena.build.fault.Reading.What;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.PointReading;
import galena.build.predict.Predict;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.engine.steady.Accuracy;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FaultTreeTest {
    private static final long SEED = 20261125;

    private static Running running;
    private static FaultStudy study;
    private static List<FaultTree> trees;
    private static List<Stage> stages;

    @BeforeAll
    static void studyTheDemo(@TempDir Path place) throws Exception {
        BuildFolder folder = DemoBuild.in(place);
        running = Running.of(folder.build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        study = FaultStudy.of(running, Progress.SILENT);
        stages = Stages.of(folder.build(), running.startup().site().part());
        Oscillation oscillation = (Oscillation)
                Predict.of(folder, Overlay.NONE, Accuracy.LIVE, Progress.SILENT).running();
        List<PointReading> points = new ArrayList<>();
        for (var point : folder.build().points().values())
            points.add(PointReading.of(folder, Overlay.NONE, point, Accuracy.LIVE, Progress.SILENT));
        trees = FaultTree.of(study, stages, Windows.of(study, oscillation, points, Map.of()));
    }

    @Test
    void every_part_has_one_stage_and_the_stages_are_those_a_builder_would_name() {
        List<String> parts = stages.stream().flatMap(s -> s.parts().stream()).toList();
        assertThat(parts)
                .doesNotHaveDuplicates()
                .containsAll(running.build().parts().keySet());
        assertThat(stages.stream().map(Stage::name))
                .containsExactly("supply", "oscillator", "modulator", "audio input", "output");
    }

    /** Ohm's law and the battery's own resistance, reckoned by hand. */
    @Test
    void a_faulty_copy_is_read_as_a_meter_would() {
        Symptoms open = symptoms("Rb open");
        double byRaAlone = open.value(direct("Q2 base")).orElseThrow();
        assertThat(byRaAlone).isBetween(6.5, 8.46);
        assertThat(symptoms("Rd open").value(direct("Q1 drain")).orElseThrow()).isLessThan(0.001);
        assertThat(symptoms("Rd open").value(new Reading(What.CARRIER, "", ""))).isEmpty();
        assertThat(symptoms("Cp open").value(new Reading(What.CARRIER, "", "")).orElseThrow())
                .isGreaterThan(1.3e6);
    }

    @Test
    void each_fault_s_own_readings_lead_to_it() {
        for (FaultTree tree : trees) {
            Set<Fault> unseen = new HashSet<>(tree.unseen());
            for (Case one : study.cases()) {
                if (!tree.stage().parts().contains(one.fault().parts().get(0)) || !FaultTree.isSolved(one)) continue;
                Suspects end = walk(tree.root(), one.symptoms());
                if (unseen.contains(one.fault())) assertThat(end.faults()).doesNotContain(one.fault());
                else assertThat(end.faults()).as(one.fault().words()).contains(one.fault());
            }
            assertThat(walk(tree.root(), study.healthy()).sound()).isTrue();
        }
    }

    @Test
    void trees_part_most_faults_that_show_at_all() {
        int alone = 0, all = 0;
        for (FaultTree tree : trees) {
            for (FaultTree.Betrayal b : tree.betrayals()) {
                all++;
                Case one = study.cases().stream()
                        .filter(c -> c.fault().equals(b.fault()))
                        .findFirst()
                        .orElseThrow();
                if (walk(tree.root(), one.symptoms()).faults().size() <= 3) alone++;
            }
        }
        assertThat(all).isGreaterThan(80);
        assertThat((double) alone / all).isGreaterThan(0.5);
    }

    /** Windows must leave room for the tolerances of all the other parts: copies drawn within them, then broken. */
    @Test
    void copies_with_other_values_within_tolerance_are_led_to_their_fault_too() {
        Random random = new Random(SEED);
        int found = 0, asked = 0;
        for (String words : List.of(
                "Rb open", "Rs open", "Q3 dead: its base is open", "Rn open", "Co open", "Cs open", "Ca open")) {
            Case one = study.cases().stream()
                    .filter(c -> c.fault().words().equals(words))
                    .findFirst()
                    .orElseThrow();
            FaultTree tree = trees.stream()
                    .filter(t -> t.stage().parts().contains(one.fault().parts().get(0)))
                    .findFirst()
                    .orElseThrow();
            for (int draw = 0; draw < 3; draw++) {
                Symptoms read = new Examination(running, study.readings(), Progress.SILENT)
                        .of(one.fault().in(drawn(running.circuit(), random)));
                asked++;
                if (walk(tree.root(), read).faults().contains(one.fault())) found++;
            }
        }
        assertThat(found).as("of " + asked + ", seed " + SEED).isGreaterThanOrEqualTo(asked * 9 / 10);
    }

    @Test
    void a_study_stops_when_it_is_told_to() {
        Progress impatient = new Progress() {
            @Override
            public void at(double share, String doing) {
                // nobody listens
            }

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        assertThatThrownBy(() -> FaultStudy.of(running, impatient)).isInstanceOf(CancellationException.class);
    }

    /** Resistors, capacitors and coils anywhere within half their tolerance. */
    private static Circuit drawn(Circuit typical, Random random) {
        Circuit circuit = typical;
        for (Part part : typical.parts()) {
            double factor = 1 + 0.025 * (2 * random.nextDouble() - 1);
            if (part instanceof Resistor r) circuit = circuit.with(r.scaled(factor));
            if (part instanceof Capacitor c) circuit = circuit.with(c.scaled(1 + (factor - 1) / 2.5));
            if (part instanceof Coil c) circuit = circuit.with(c.scaled(1 + (factor - 1) / 2.5, 1));
        }
        return circuit;
    }

    private static Symptoms symptoms(String words) {
        return study.cases().stream()
                .filter(c -> c.fault().words().equals(words))
                .findFirst()
                .orElseThrow()
                .symptoms();
    }

    private static Reading direct(String where) {
        return study.readings().stream()
                .filter(r -> r.what() == What.DIRECT && r.where().equals(where))
                .findFirst()
                .orElseThrow();
    }

    /** As a builder goes: the branch whose window holds the reading, else the nearest. */
    private static Suspects walk(Node node, Symptoms read) {
        if (node instanceof Suspects end) return end;
        Ask ask = (Ask) node;
        OptionalDouble value = read.value(ask.reading());
        Branch best = ask.branches().get(0);
        double nearest = Double.POSITIVE_INFINITY;
        for (Branch branch : ask.branches()) {
            if (branch.window().isEmpty() != value.isEmpty()) continue;
            double miss = value.isEmpty()
                    ? 0
                    : Math.max(
                            0,
                            Math.max(
                                    branch.window().get().low() - value.getAsDouble(),
                                    value.getAsDouble() - branch.window().get().high()));
            if (miss < nearest) {
                nearest = miss;
                best = branch;
            }
        }
        return walk(best.then(), read);
    }
}
