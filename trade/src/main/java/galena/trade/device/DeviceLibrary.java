package galena.trade.device;

import galena.trade.source.DataTable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The devices that Galena knows, by type number. Immutable; {@link #with} gives a larger one. */
public final class DeviceLibrary {
    private static final int SUGGESTIONS = 3;

    private final Map<String, Device> byType;

    private DeviceLibrary(Map<String, Device> byType) {
        this.byType = byType;
    }

    private static final class Standard {
        static final DeviceLibrary LIBRARY = new DeviceLibrary(Map.of())
                .with(DeviceTable.read(DataTable.resource(DeviceLibrary.class, "devices.csv")));
    }

    /** The library shipped with Galena. */
    public static DeviceLibrary standard() {
        return Standard.LIBRARY;
    }

    /** This library and some more devices; one of the same type number takes the old one's place. */
    public DeviceLibrary with(Collection<? extends Device> devices) {
        Map<String, Device> all = new LinkedHashMap<>(byType);
        for (Device device : devices) all.put(key(device.type()), device);
        return new DeviceLibrary(all);
    }

    /** Every type number, in the order of the data. */
    public List<String> types() {
        return byType.values().stream().map(Device::type).toList();
    }

    public List<Device> devices() {
        return List.copyOf(byType.values());
    }

    /** A device by its type number; case and blanks don't matter. */
    public Lookup find(String type) {
        Device device = byType.get(key(type));
        return device != null ? new Lookup.Known(device) : new Lookup.Unknown(type, nearest(type));
    }

    /**
     * A device of one kind, for callers who have checked before or show the message as it is.
     *
     * @throws DeviceDataException if it isn't held or is of another kind; the message names the nearest
     */
    public <D extends Device> D require(String type, Class<D> kind) {
        Lookup answer = find(type);
        if (answer instanceof Lookup.Unknown unknown) throw new DeviceDataException(List.of(unknown.message()));
        Device device = ((Lookup.Known) answer).device();
        if (kind.isInstance(device)) return kind.cast(device);
        throw new DeviceDataException(
                List.of(device.type() + " is a " + device.family().word() + ", which can't stand here"));
    }

    private List<String> nearest(String asked) {
        String wanted = key(asked);
        record Candidate(String type, int distance) {}
        List<Candidate> candidates = new ArrayList<>();
        byType.forEach((key, device) -> candidates.add(new Candidate(device.type(), distance(wanted, key))));
        return candidates.stream()
                .filter(c -> c.distance <= Math.max(2, wanted.length() / 2))
                .sorted(Comparator.comparingInt(Candidate::distance).thenComparing(Candidate::type))
                .limit(SUGGESTIONS)
                .map(Candidate::type)
                .toList();
    }

    private static String key(String type) {
        return type.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
    }

    /** Edit distance: insertions, deletions and substitutions that turn one into the other. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) row[j] = j;
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(substituted, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
