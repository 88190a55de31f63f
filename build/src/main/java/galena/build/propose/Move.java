package galena.build.propose;

import galena.build.attempt.Aim;
import galena.build.attempt.OutputTank;
import galena.build.attempt.Stock;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Engineering;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One change of a build, as a builder would make it: a value one or two steps along its series, a turn or two of the aerial, another
 * device from the drawer.
 *
 * @param part changed; of equal parts that change together, the first
 * @param way 1 up, −1 down, 0 for another device
 * @param to the new value in words
 * @param changes in the text
 */
record Move(String part, int way, String to, Map<String, String> changes) {
    /** Larger capacitors decouple or couple audio; their value hardly counts. */
    private static final double TUNES_UP_TO = 5e-9;

    private static final double TURNS_STEP = 0.1;

    /** Every move from a build. */
    static List<Move> all(Build build, Stock stock, OnHand onHand) {
        List<Move> moves = new ArrayList<>();
        String peak = OutputTank.across(build, PartKind.CAPACITOR, "")
                .filter(p -> OutputTank.across(build, PartKind.TRIMMER, "").isPresent())
                .map(PartEntry::name)
                .orElse("");
        for (List<PartEntry> group : groups(build)) {
            PartEntry first = group.get(0);
            if (first.name().equals(peak)) continue;
            for (int way : new int[] {1, -1}) {
                step(group, way, 1, stock).ifPresent(moves::add);
                step(group, way, 2, stock).ifPresent(moves::add);
            }
        }
        Aim.aerial(build).ifPresent(aerial -> {
            for (int way : new int[] {1, -1}) turns(build, aerial, way, onHand).ifPresent(moves::add);
        });
        for (PartEntry part : build.parts().values())
            if (part.kind() == PartKind.TRIMMER && part.range().isPresent()) trimmers(part, stock, moves);
        if (stock.hasDevices()) {
            build.parts().values().forEach(p -> devices(p, stock, moves));
        }
        return moves;
    }

    /** The single step of a part up or down; empty at the end of what can be had. */
    static Optional<Move> step(Build build, String part, int way, Stock stock, OnHand onHand) {
        Optional<List<PartEntry>> group =
                groups(build).stream().filter(g -> g.get(0).name().equals(part)).findFirst();
        if (group.isPresent()) return step(group.get(), way, 1, stock);
        return Aim.aerial(build).filter(a -> a.name().equals(part)).flatMap(a -> turns(build, a, way, onHand));
    }

    /** Values that are varied; equal resistors from one net stay equal. */
    static List<List<PartEntry>> groups(Build build) {
        Map<String, List<PartEntry>> groups = new LinkedHashMap<>();
        for (PartEntry part : build.parts().values()) {
            boolean varied = part.kind() == PartKind.RESISTOR
                    || (part.kind() == PartKind.CAPACITOR
                            && part.value().orElseThrow().value() < TUNES_UP_TO);
            if (!varied) continue;
            String twin = part.kind() == PartKind.RESISTOR && part.name().matches("R\\d")
                    ? part.value().orElseThrow().value() + part.pin("from")
                    : part.name();
            groups.computeIfAbsent(twin, k -> new ArrayList<>()).add(part);
        }
        return List.copyOf(groups.values());
    }

    private static Optional<Move> step(List<PartEntry> group, int way, int steps, Stock stock) {
        PartEntry first = group.get(0);
        double value = first.value().orElseThrow().value();
        for (int k = 0; k < steps; k++) {
            OptionalDouble next = stock.next(first.kind(), value, way);
            if (next.isEmpty()) return Optional.empty();
            value = next.getAsDouble();
        }
        String text = Engineering.exact(value, first.kind() == PartKind.RESISTOR ? Unit.OHM : Unit.FARAD);
        Map<String, String> changes = group.stream()
                .collect(Collectors.toMap(p -> p.path() + "." + p.kind().key(), p -> text));
        return Optional.of(new Move(first.name(), way * steps, text, changes));
    }

    private static Optional<Move> turns(Build build, PartEntry aerial, int way, OnHand onHand) {
        Optional<OnHand.Form> form = onHand.form(aerial);
        if (form.isEmpty() || !aerial.kind().isCoil() || aerial.value().isEmpty()) return Optional.empty();
        double now = aerial.values().si("turns", 0);
        double turns = Math.round(now + way * Math.max(1, TURNS_STEP * now));
        if (turns < 2) return Optional.empty();
        double wanted = aerial.value().get().value() * Math.pow(turns / now, 2);
        return onHand.aerial(form.get(), wanted)
                .filter(w -> w.turns() != (int) Math.round(now))
                .map(w -> {
                    Map<String, String> changes = new LinkedHashMap<>();
                    Tuning.replace(build, aerial, w.keys(), changes);
                    return new Move(aerial.name(), way, w.turns() + " turns", changes);
                });
    }

    /** Other ranges that can be had: more reach, or a finer turn. */
    private static void trimmers(PartEntry part, Stock stock, List<Move> moves) {
        for (Range range : stock.trimmers())
            if (!range.text().equals(part.label()))
                moves.add(new Move(part.name(), 0, range.text(), Map.of(part.path() + ".trimmer", range.text())));
    }

    private static void devices(PartEntry part, Stock stock, List<Move> moves) {
        if (part.type().isEmpty()
                || !Set.of(PartKind.JFET, PartKind.NPN, PartKind.PNP).contains(part.kind())) return;
        for (String type : stock.devices(part.kind())) {
            if (type.equals(part.type().get())) continue;
            moves.add(new Move(
                    part.name(), 0, type, Map.of(part.path() + "." + part.kind().key(), type)));
        }
    }
}
