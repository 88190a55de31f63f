package galena.build.fault;

import galena.build.folder.Build;
import galena.build.folder.Coupled;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.quantity.Quantity;
import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Divides a build into stages by its direct-current paths: what hangs together without passing a capacitor or a rail works
 * together; a crystal belongs to both its ends. The tank that radiates is a stage of its own where the oscillator's is another.
 */
public final class Stages {
    /** A resistor up to here feeds a rail, Ω; above it, a bias (common practice). */
    private static final double FEEDS = 1.5e3;

    /** From here a capacitor to ground holds a rail, F. */
    private static final double HOLDS = 10e-9;

    /** Above this two coils are one transformer. */
    private static final double ONE_CORE = 0.1;

    private final Build build;
    private final String tank;
    private final Set<String> rails = new LinkedHashSet<>(List.of(Circuit.GROUND));
    private final Map<String, String> roots = new LinkedHashMap<>();

    private Stages(Build build, String tank) {
        this.build = build;
        this.tank = tank;
    }

    /** @param tank the coil or resonator that the oscillation lives in, as its startup names it */
    public static List<Stage> of(Build build, String tank) {
        Stages stages = new Stages(build, tank);
        stages.findRails();
        stages.join();
        return stages.list();
    }

    private void findRails() {
        build.supply().ifPresent(s -> rails.addAll(List.of(s.plus(), s.minus())));
        for (PartEntry part : build.parts().values())
            if (part.kind() == PartKind.VOLTAGE) rails.addAll(part.pins().values());
        for (boolean more = true; more; ) {
            more = false;
            for (PartEntry part : build.parts().values()) {
                if (part.kind() != PartKind.RESISTOR || value(part) > FEEDS) continue;
                String from = part.pin("from"), to = part.pin("to");
                if (rails.contains(from) && !from.equals(Circuit.GROUND) && isHeld(to)) more |= rails.add(to);
                if (rails.contains(to) && !to.equals(Circuit.GROUND) && isHeld(from)) more |= rails.add(from);
            }
        }
    }

    private static double value(PartEntry part) {
        return part.value().map(Quantity::value).orElse(Double.POSITIVE_INFINITY);
    }

    private boolean isHeld(String net) {
        return build.parts().values().stream()
                .anyMatch(p -> p.kind() == PartKind.CAPACITOR
                        && value(p) >= HOLDS
                        && p.pins().containsValue(net)
                        && p.pins().containsValue(Circuit.GROUND));
    }

    private void join() {
        for (PartEntry part : build.parts().values()) {
            if (isCapacitive(part.kind())) continue;
            List<String> nets = new ArrayList<>(part.pins().values());
            nets.removeAll(rails);
            nets.removeIf(this::isOutput);
            for (String net : nets) union(nets.get(0), net);
        }
        for (Coupled coupled : build.couplings()) if (Math.abs(coupled.k().value()) >= ONE_CORE) couple(coupled);
    }

    private void couple(Coupled coupled) {
        List<String> nets =
                new ArrayList<>(build.part(coupled.first()).orElseThrow().pins().values());
        nets.addAll(build.part(coupled.second()).orElseThrow().pins().values());
        nets.removeAll(rails);
        nets.removeIf(this::isOutput);
        for (String net : nets) union(nets.get(0), net);
    }

    private static boolean isCapacitive(PartKind kind) {
        return kind == PartKind.CAPACITOR || kind == PartKind.TRIMMER || kind == PartKind.WIRE;
    }

    /** A net of the aerial, unless the aerial is the oscillator's own tank. */
    private boolean isOutput(String net) {
        if (build.part(tank).map(p -> p.pins().containsValue(net)).orElse(false)) return false;
        return build.parts().values().stream()
                .anyMatch(p -> p.kind().isAerial() && p.pins().containsValue(net) && !rails.contains(net));
    }

    private String root(String net) {
        String at = net;
        while (true) {
            String next = roots.getOrDefault(at, at);
            if (next.equals(at)) return at;
            at = next;
        }
    }

    private void union(String one, String other) {
        String a = root(one), b = root(other);
        if (!a.equals(b)) roots.put(b, a);
    }

    private List<Stage> list() {
        Map<String, List<String>> byName = new LinkedHashMap<>();
        Map<String, String> names = names();
        build.supply().ifPresent(s -> byName.computeIfAbsent("supply", n -> new ArrayList<>())
                .add(Supply.NAME));
        for (PartEntry part : build.parts().values())
            byName.computeIfAbsent(names.getOrDefault(home(part), "supply"), n -> new ArrayList<>())
                    .add(part.name());
        return byName.entrySet().stream()
                .map(e -> new Stage(e.getKey(), e.getValue()))
                .toList();
    }

    /** The group a part belongs to; of a coupling capacitor, the group of the device that it feeds. */
    private String home(PartEntry part) {
        List<String> nets = new ArrayList<>(part.pins().values());
        nets.removeAll(rails);
        if (nets.isEmpty()) return "";
        if (Readings.isDevice(part.kind()))
            return nets.stream()
                    .filter(n -> !isOutput(n))
                    .map(this::root)
                    .findFirst()
                    .orElse(root(nets.get(0)));
        return nets.stream()
                .map(this::root)
                .filter(root -> !root.equals(root(tankNet())) && hasInput(root))
                .findFirst()
                .orElse(root(nets.get(0)));
    }

    private String tankNet() {
        return build.part(tank)
                .flatMap(p -> p.pins().values().stream()
                        .filter(net -> !rails.contains(net))
                        .findFirst())
                .orElse("");
    }

    private boolean hasInput(String root) {
        return build.parts().values().stream()
                .filter(p -> Readings.isDevice(p.kind()))
                .flatMap(p -> p.pins().entrySet().stream())
                .anyMatch(
                        pin -> (pin.getKey().startsWith("base") || pin.getKey().startsWith("gate"))
                                && !rails.contains(pin.getValue())
                                && root(pin.getValue()).equals(root));
    }

    private Map<String, String> names() {
        Map<String, String> names = new LinkedHashMap<>();
        Map<String, String> devices = new LinkedHashMap<>();
        Set<String> heard = new LinkedHashSet<>();
        for (PartEntry part : build.parts().values()) {
            for (String net : part.pins().values()) {
                if (rails.contains(net)) continue;
                String root = root(net);
                if (root.equals(root(tankNet()))) names.put(root, "oscillator");
                else if (isOutput(net)) names.put(root, "output");
                else if (Readings.isDevice(part.kind())) devices.putIfAbsent(root, part.name());
                else if (part.kind().isProgramme()) heard.add(root);
                else names.putIfAbsent(root, "network at " + net);
            }
        }
        heard.forEach(root -> names.put(root, "audio input"));
        boolean single = devices.size() == 1 && hasAudio();
        devices.forEach((root, device) -> names.put(root, single ? "modulator" : "stage around " + device));
        return names;
    }

    private boolean hasAudio() {
        return build.parts().values().stream().anyMatch(p -> p.kind().isProgramme());
    }
}
