package galena.desk.console;

import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where a command's words go: answers to standard output, progress and problems to standard error. Decides once what can be
 * shown. A terminal gets the characters of its locale, colour if {@code NO_COLOR} is unset and {@code TERM} isn't {@code dumb};
 * a pipe or file gets UTF-8 without colour.
 */
public final class Terminal {
    private static final int USUAL_WIDTH = 80;
    private static final int WIDEST = 120;

    /** Kinds of emphasis; never the only carrier of a meaning. */
    public enum Tone {
        STRONG("1"),
        FAINT("2"),
        GOOD("32"),
        BAD("31"),
        WARNING("33");

        private final String code;

        Tone(String code) {
            this.code = code;
        }
    }

    private final PrintStream out;
    private final PrintStream err;
    private final Characters characters;
    private final boolean colour;
    private final boolean interactive;
    private final int width;

    /**
     * @param out answers
     * @param err progress and problems
     * @param charset what both can show
     * @param colour whether to colour
     * @param interactive whether a person watches {@code err} as it is written
     * @param width columns
     */
    public Terminal(PrintStream out, PrintStream err, Charset charset, boolean colour, boolean interactive, int width) {
        this.out = out;
        this.err = err;
        characters = new Characters(charset);
        this.colour = colour;
        this.interactive = interactive;
        this.width = width;
    }

    /** The terminal that this process was started from. */
    public static Terminal ofProcess() {
        return ofProcess(System.getenv(), console().map(Console::charset));
    }

    /** From Java 22 on there is a console object for pipes too, and a method that tells; Java 17 has neither. */
    @SuppressWarnings("SystemConsoleNull") // null is one of the two cases met here
    private static Optional<Console> console() {
        Console console = System.console();
        if (console == null) return Optional.empty();
        try {
            boolean terminal = (boolean) Console.class.getMethod("isTerminal").invoke(console);
            return terminal ? Optional.of(console) : Optional.empty();
        } catch (ReflectiveOperationException olderJava) {
            return Optional.of(console);
        }
    }

    /** @param console the charset of the console that both ends are joined to; empty for a pipe or file */
    static Terminal ofProcess(Map<String, String> environment, Optional<Charset> console) {
        boolean onTerminal = console.isPresent();
        Charset charset = console.map(c -> charset(environment, c)).orElse(StandardCharsets.UTF_8);
        boolean colour = onTerminal
                && environment.getOrDefault("NO_COLOR", "").isEmpty()
                && !"dumb".equals(environment.get("TERM"));
        return new Terminal(
                new PrintStream(new FileOutputStream(FileDescriptor.out), false, charset),
                new PrintStream(new FileOutputStream(FileDescriptor.err), true, charset),
                charset,
                colour,
                onTerminal && !"dumb".equals(environment.get("TERM")),
                width(environment.get("COLUMNS")));
    }

    /**
     * What the locale says, by the first of the three variables that is set; with none set, UTF-8, as terminals have it today. The
     * plain locales C and POSIX mean ASCII. On Windows none is set and the console knows its code page.
     */
    static Charset charset(Map<String, String> environment, Charset console) {
        for (String variable : new String[] {"LC_ALL", "LC_CTYPE", "LANG"}) {
            String locale = environment.getOrDefault(variable, "");
            if (locale.isEmpty()) continue;
            if (locale.equals("C") || locale.equals("POSIX")) return StandardCharsets.US_ASCII;
            int dot = locale.indexOf('.');
            if (dot < 0) return console;
            String name = locale.substring(dot + 1).replaceFirst("@.*", "");
            try {
                return Charset.forName(name.equalsIgnoreCase("utf8") ? "UTF-8" : name);
            } catch (IllegalCharsetNameException | UnsupportedCharsetException unknown) {
                return console;
            }
        }
        boolean windows =
                System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
        return windows ? console : StandardCharsets.UTF_8;
    }

    private static int width(@Nullable String columns) {
        if (columns == null || !columns.matches("[0-9]{2,4}")) return USUAL_WIDTH;
        return Math.min(WIDEST, Math.max(40, Integer.parseInt(columns)));
    }

    /** Prints an answer and a line end. */
    public void print(String text) {
        out.println(characters.shown(text));
        out.flush();
    }

    /** Prints a document that must arrive byte for byte, such as JSON or SVG; it is always UTF-8. */
    public void printDocument(String text) {
        out.flush();
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.write(bytes, 0, bytes.length);
        out.flush();
    }

    /** Prints a problem or a remark, apart from the answer. */
    public void remark(String text) {
        err.println(characters.shown(text));
    }

    /** Writes over the current line of the remarks; nothing where nobody watches. */
    void overwrite(String text) {
        if (!interactive) return;
        err.print("\r\u001b[K" + characters.shown(text));
        err.flush();
    }

    /** The text in a tone, if this terminal colours. */
    public String tone(Tone tone, String text) {
        return colour ? "\u001b[" + tone.code + "m" + text + "\u001b[0m" : text;
    }

    public boolean colours() {
        return colour;
    }

    /** The text as it will appear, for measuring its width before it is laid out. */
    public String shown(String text) {
        return characters.shown(text);
    }

    /** Whether these characters can be shown as they are. */
    public boolean canShow(String text) {
        return characters.canShow(text);
    }

    /** Columns. */
    public int width() {
        return width;
    }

    PrintStream errors() {
        return err;
    }

    /** Prints a stack where problems go. */
    public void stack(Throwable fault) {
        fault.printStackTrace(err);
    }
}
