package org.keeplit.editor;

import com.google.gson.JsonPrimitive;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The messages of an editor as they come in, without those that are no JSON, or nested so deep that reading them would end the listening. */
final class Frames extends InputStream {
    /** No message of the protocol is nested half as deep. */
    static final int DEEPEST = 100;

    private static final int LONGEST_HEAD = 8192;
    private static final int LONGEST = 256 << 20;
    private static final Pattern LENGTH = Pattern.compile("(?i)content-length\\s*:\\s*(\\d{1,9})\\s*(?:\\r|$)", Pattern.MULTILINE);

    private final InputStream in;
    private BiConsumer<String, String> refused = (id, why) -> {};
    private byte[] frame = new byte[0];
    private int at;

    Frames(InputStream in) {
        this.in = in;
    }

    /** Says who answers what is not passed on. @param answer is given the request's identifier as JSON, {@code null} where it has none, and why */
    void whenRefused(BiConsumer<String, String> answer) {
        refused = answer;
    }

    @Override
    public int read() throws IOException {
        return more() ? frame[at++] & 0xFF : -1;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
        if (length == 0) {
            return 0;
        } else if (!more()) {
            return -1;
        }
        int count = Math.min(length, frame.length - at);
        System.arraycopy(frame, at, into, from, count);
        at += count;
        return count;
    }

    @Override
    public int available() {
        return frame.length - at;
    }

    /** {@return whether there is another byte} */
    private boolean more() throws IOException {
        while (at == frame.length) {
            byte[] head = head();
            if (head.length == 0) {
                return false;
            }
            Matcher length = LENGTH.matcher(new String(head, StandardCharsets.US_ASCII));
            byte[] body = length.find() && Integer.parseInt(length.group(1)) <= LONGEST
                    ? in.readNBytes(Integer.parseInt(length.group(1)))
                    : new byte[0];
            at = 0;
            String wrong = depth(body) > DEEPEST
                    ? "the message is nested deeper than " + DEEPEST + " levels"
                    : body.length > 0 && !isJson(body) ? "the message is no JSON" : "";
            if (!wrong.isEmpty()) {
                frame = new byte[0];
                refused.accept(id(body), wrong);
            } else {
                frame = new byte[head.length + body.length];
                System.arraycopy(head, 0, frame, 0, head.length);
                System.arraycopy(body, 0, frame, head.length, body.length);
            }
        }
        return true;
    }

    /** {@return the lines before a message with the empty one behind them; nothing at the end of the input} */
    private byte[] head() throws IOException {
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        int ends = 0;
        while (ends < 2 && head.size() < LONGEST_HEAD) {
            int c = in.read();
            if (c < 0) {
                break;
            }
            head.write(c);
            ends = c == '\n' ? ends + 1 : c == '\r' ? ends : 0;
        }
        return head.toByteArray();
    }

    private static int depth(byte[] json) {
        int depth = 0;
        int deepest = 0;
        boolean quoted = false;
        for (int i = 0; i < json.length; i++) {
            switch (json[i]) {
                case '"' -> quoted = !quoted;
                case '\\' -> i += quoted ? 1 : 0;
                case '[', '{' -> deepest = Math.max(deepest, quoted ? 0 : ++depth);
                case ']', '}' -> depth -= quoted ? 0 : 1;
                default -> {}
            }
        }
        return deepest;
    }

    private static boolean isJson(byte[] json) {
        try (JsonReader reader = new JsonReader(new InputStreamReader(new ByteArrayInputStream(json), StandardCharsets.UTF_8))) {
            reader.skipValue();
            return reader.peek() == JsonToken.END_DOCUMENT;
        } catch (IOException | IllegalStateException bad) {
            return false;
        }
    }

    /** {@return the identifier of a request as JSON} */
    private static String id(byte[] json) {
        try (JsonReader reader = new JsonReader(new InputStreamReader(new ByteArrayInputStream(json), StandardCharsets.UTF_8))) {
            reader.setNestingLimit(Integer.MAX_VALUE);
            reader.beginObject();
            while (reader.hasNext()) {
                if (!reader.nextName().equals("id")) {
                    reader.skipValue();
                } else if (reader.peek() == JsonToken.NUMBER) {
                    return reader.nextString();
                } else if (reader.peek() == JsonToken.STRING) {
                    return new JsonPrimitive(reader.nextString()).toString();
                }
            }
        } catch (IOException | IllegalStateException bad) {
            // It has none that could be read.
        }
        return "null";
    }
}
