package galena.packet.sheet;

import galena.build.fault.Fault;
import galena.build.fault.FaultTree;
import galena.build.fault.FaultTree.Ask;
import galena.build.fault.FaultTree.Betrayal;
import galena.build.fault.FaultTree.Branch;
import galena.build.fault.FaultTree.Node;
import galena.build.fault.FaultTree.Suspects;
import galena.build.fault.Reading;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Heading;
import galena.packet.page.Page.Item;
import galena.packet.page.Page.Outline;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What to read in which order when it does not do what it should, and what would be the reason. */
final class FaultSheet {
    private FaultSheet() {}

    static Optional<Section> of(Findings findings) {
        List<FaultTree> trees = findings.outlook().faults();
        if (trees.isEmpty()) return Optional.empty();
        int count = trees.stream()
                .mapToInt(t ->
                        t.betrayals().size() + t.unseen().size() + t.unsolved().size())
                .sum();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paragraph(
                count + " faults were solved one at a time, each a copy of this build with otherwise typical"
                        + " parts. Take the reading that stands first, go to the branch in whose range it lies, or the nearest, and go on"
                        + " from there. Direct voltages are read with a meter of 10 MΩ through 100 kΩ at its tip, against ground, while"
                        + " it is switched on; audio voltages with a 1 kHz tone at the programme's level. What no reading tells apart"
                        + " stands together. Only one fault at a time was looked at."));
        trees.forEach(tree -> stage(tree, blocks));
        return Optional.of(new Section("faults", "When it does not work", blocks));
    }

    private static void stage(FaultTree tree, List<Block> blocks) {
        blocks.add(new Heading("Stage: " + tree.stage().name() + " ("
                + String.join(", ", tree.stage().parts()) + ")"));
        if (tree.root() instanceof Ask ask) blocks.add(new Outline(List.of(item("Read the " + ask.reading(), ask))));
        if (!tree.betrayals().isEmpty())
            blocks.add(new Grid(
                    "What betrays each fault of the " + tree.stage().name() + " most.",
                    List.of("Fault", "Reading", "Should be", "With the fault"),
                    tree.betrayals().stream().map(FaultSheet::row).toList()));
        if (!tree.unseen().isEmpty())
            blocks.add(new Paragraph(
                    "Not to be seen in these readings, and mostly harmless: " + words(tree.unseen()) + "."));
        if (!tree.unsolved().isEmpty())
            blocks.add(new Paragraph("Nothing can be said of: "
                    + String.join(
                            "; ",
                            tree.unsolved().stream()
                                    .map(u -> u.fault() + " (" + u.reason() + ")")
                                    .toList())
                    + "."));
    }

    private static Item item(String text, Ask ask) {
        return new Item(
                text, ask.branches().stream().map(b -> branch(ask.reading(), b)).toList());
    }

    private static Item branch(Reading reading, Branch branch) {
        String range = branch.window()
                        .map(w -> Wording.span(w.low(), w.high(), reading.what().unit()))
                        .orElse("none")
                + (branch.sound() ? ", as it should be" : "");
        Node then = branch.then();
        if (then instanceof Ask ask) return item(range + ": read the " + ask.reading(), ask);
        Suspects end = (Suspects) then;
        if (end.faults().isEmpty()) return Item.of(range + ": this stage does its work");
        return Item.of(range + ": " + words(end.faults()) + (end.sound() ? ", or nothing" : ""));
    }

    private static String words(List<Fault> faults) {
        return String.join("; ", faults.stream().map(Fault::words).toList());
    }

    private static List<String> row(Betrayal b) {
        String found = b.found().isPresent()
                ? Wording.number(b.found().getAsDouble(), b.reading().what().unit(), 3)
                : "none";
        return List.of(
                b.fault().words(),
                b.reading().toString(),
                Wording.span(
                        b.sound().low(), b.sound().high(), b.reading().what().unit()),
                found);
    }
}
