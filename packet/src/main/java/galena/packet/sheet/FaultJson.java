package galena.packet.sheet;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.fault.Fault;
import galena.build.fault.FaultTree;
import galena.build.fault.FaultTree.Ask;
import galena.build.fault.FaultTree.Betrayal;
import galena.build.fault.FaultTree.Branch;
import galena.build.fault.FaultTree.Node;
import galena.build.fault.FaultTree.Suspects;
import galena.build.fault.FaultTree.Window;
import galena.build.fault.Reading;
import java.util.List;

/** The fault trees for programs. */
final class FaultJson {
    private FaultJson() {}

    static void add(Findings findings, ObjectNode top) {
        ArrayNode stages = top.putArray("faults");
        for (FaultTree tree : findings.outlook().faults()) {
            ObjectNode stage = stages.addObject();
            stage.put("stage", tree.stage().name());
            ArrayNode parts = stage.putArray("parts");
            tree.stage().parts().forEach(parts::add);
            node(stage.putObject("tree"), tree.root());
            ArrayNode betrayals = stage.putArray("betrayals");
            tree.betrayals().forEach(b -> betrayal(betrayals.addObject(), b));
            names(stage.putArray("unseen"), tree.unseen());
            ArrayNode unsolved = stage.putArray("unsolved");
            tree.unsolved()
                    .forEach(u ->
                            unsolved.addObject().put("fault", u.fault().words()).put("reason", u.reason()));
        }
    }

    private static void node(ObjectNode to, Node node) {
        if (node instanceof Suspects end) {
            to.put("sound", end.sound());
            names(to.putArray("suspects"), end.faults());
            return;
        }
        Ask ask = (Ask) node;
        reading(to.putObject("read"), ask.reading());
        ArrayNode branches = to.putArray("branches");
        for (Branch branch : ask.branches()) {
            ObjectNode one = branches.addObject();
            branch.window().ifPresent(w -> window(one, w));
            one.put("sound", branch.sound());
            node(one.putObject("then"), branch.then());
        }
    }

    private static void betrayal(ObjectNode to, Betrayal b) {
        to.put("fault", b.fault().words());
        ArrayNode parts = to.putArray("parts");
        b.fault().parts().forEach(parts::add);
        reading(to.putObject("read"), b.reading());
        window(to.putObject("should_be"), b.sound());
        b.found().ifPresent(found -> to.put("with_the_fault", found));
    }

    private static void reading(ObjectNode to, Reading reading) {
        to.put("quantity", reading.what().toString())
                .put("unit", reading.what().unit().symbol())
                .put("at", reading.where());
    }

    private static void window(ObjectNode to, Window window) {
        to.put("low", window.low()).put("high", window.high());
    }

    private static void names(ArrayNode to, List<Fault> faults) {
        faults.forEach(f -> to.add(f.words()));
    }
}
