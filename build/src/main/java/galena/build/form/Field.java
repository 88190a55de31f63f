package galena.build.form;

import galena.build.source.FileVersion;

/**
 * One key of a group.
 *
 * @param key the word before the colon
 * @param type what may stand behind it
 * @param required whether it must be there
 * @param missing what is said where it is required and isn't there: "lacks the key frequency"
 * @param rule what it is for and takes, a whole sentence: shown with every problem of the value, and by editors
 */
public record Field(String key, Type type, boolean required, String missing, String rule) {
    public Field {
        if (!rule.endsWith(".")) throw new IllegalArgumentException("a rule is a sentence: " + rule);
    }

    /** The version line, which every file starts with. */
    public static Field version() {
        return needed(FileVersion.KEY, new Version(), "The first line says which version of the format the file has.");
    }

    public static Field needed(String key, Type type, String rule) {
        return new Field(key, type, true, "lacks the key " + key, rule);
    }

    /** A pin, whose absence is called by its name. */
    public static Field pin(String pin, Type net, String rule) {
        return new Field(pin, net, true, "the pin " + pin + " is joined to nothing", rule);
    }

    public static Field optional(String key, Type type, String rule) {
        return new Field(key, type, false, "", rule);
    }
}
