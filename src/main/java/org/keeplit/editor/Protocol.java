package org.keeplit.editor;

import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.Method;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.json.StreamMessageConsumer;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.MessageIssue;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseMessage;
import org.eclipse.lsp4j.jsonrpc.services.ServiceEndpoints;
import org.eclipse.lsp4j.jsonrpc.validation.NonNull;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/** What the protocol asks of any server, whatever the question is about: each wrong message gets the answer that is meant for it. */
public final class Protocol {
    private static final String INITIALIZE = "initialize";

    /** What is asked without parameters. */
    private static final Set<String> BARE = Set.of("shutdown", "exit");

    private Protocol() {}

    /**
     * Joins a server to an editor.
     *
     * @param server the server
     * @param in what the editor says
     * @param out what it is told
     * @return what starts the listening, and speaks to the editor
     */
    public static Launcher<LanguageClient> launcher(EditorServer server, InputStream in, OutputStream out) {
        Frames frames = new Frames(in);
        Launcher.Builder<LanguageClient> builder = new Launcher.Builder<>() {
            @Override
            protected RemoteEndpoint createRemoteEndpoint(MessageJsonHandler json) {
                MessageConsumer consumer = wrapMessageConsumer(new StreamMessageConsumer(output, json));
                frames.whenRefused((id, why) -> consumer.consume(unread(id, why)));
                RemoteEndpoint remote = new Answering(consumer, new Gate(ServiceEndpoints.toEndpoint(localServices)));
                json.setMethodProvider(remote);
                remote.setJsonHandler(json);
                return remote;
            }
        };
        return builder.setLocalService(server)
                .setRemoteInterface(LanguageClient.class)
                .setInput(frames)
                .setOutput(out)
                .create();
    }

    private static ResponseMessage unread(String id, String why) {
        ResponseMessage message = new ResponseMessage();
        if (JsonParser.parseString(id) instanceof JsonPrimitive known) {
            if (known.isString()) {
                message.setId(known.getAsString());
            } else {
                message.setId(known.getAsInt());
            }
        }
        message.setError(new ResponseError(ResponseErrorCode.ParseError, why, null));
        return message;
    }

    /** Answers what is wrong in words of the protocol. */
    private static final class Answering extends RemoteEndpoint {
        private final MessageConsumer out;

        Answering(MessageConsumer out, Endpoint local) {
            super(out, local, Protocol::error);
            this.out = out;
        }

        @Override
        protected void handleRequestIssues(RequestMessage request, List<MessageIssue> issues) {
            out.consume(createErrorResponseMessage(
                    request, new ResponseError(ResponseErrorCode.InvalidParams, "the parameters of " + request.getMethod() + " do not have the form that it asks for", null)));
        }

        @Override
        protected void logIssues(Message message, List<MessageIssue> issues) {
            System.err.println("A message of the editor could not be read.");
        }
    }

    /** {@return what an editor is told of an exception} */
    private static ResponseError error(Throwable thrown) {
        Throwable why = thrown instanceof CompletionException && thrown.getCause() != null ? thrown.getCause() : thrown;
        if (why instanceof ResponseErrorException refused) {
            return refused.getResponseError();
        }
        why.printStackTrace();
        return new ResponseError(ResponseErrorCode.InternalError, "this failed by a fault of keeplit, which is told where it was started", null);
    }

    /** Lets through what the server can answer. */
    private static final class Gate implements Endpoint {
        private final Endpoint server;
        private final Set<String> known = ServiceEndpoints.getSupportedMethods(LanguageServer.class).keySet();
        private volatile boolean begun;

        Gate(Endpoint server) {
            this.server = server;
        }

        @Override
        public CompletableFuture<?> request(String method, Object params) {
            if (!begun && !method.equals(INITIALIZE)) {
                return refused(ResponseErrorCode.ServerNotInitialized, "the first request is " + INITIALIZE);
            } else if (begun && method.equals(INITIALIZE)) {
                return refused(ResponseErrorCode.InvalidRequest, INITIALIZE + " comes once");
            } else if (!known.contains(method)) {
                return refused(ResponseErrorCode.MethodNotFound, "there is no method " + method);
            } else if (!BARE.contains(method)) {
                Optional<String> missing = missing("params", params);
                if (missing.isPresent()) {
                    return refused(ResponseErrorCode.InvalidParams, missing.get() + " is missing from " + method);
                }
            }
            try {
                CompletableFuture<?> answer = server.request(method, params);
                begun = true;
                return answer;
            } catch (UnsupportedOperationException none) {
                return refused(ResponseErrorCode.MethodNotFound, method + " is not answered here");
            }
        }

        private static CompletableFuture<?> refused(ResponseErrorCode code, String why) {
            return CompletableFuture.failedFuture(Texts.refused(code, why));
        }

        @Override
        public void notify(String method, Object params) {
            boolean usable = known.contains(method) && (BARE.contains(method) || missing("params", params).isEmpty());
            if (usable && (begun || method.equals("exit"))) {
                server.notify(method, params);
            }
        }

        /** {@return the path to what must be there in parameters and is not} */
        private static Optional<String> missing(String path, Object value) {
            if (value == null) {
                return Optional.of(path);
            }
            if (value.getClass().getPackageName().equals("org.eclipse.lsp4j")) {
                for (Method method : value.getClass().getMethods()) {
                    if (method.getName().startsWith("get") && method.getParameterCount() == 0 && method.isAnnotationPresent(NonNull.class)) {
                        Optional<String> inside = missing(path + "." + property(method), called(method, value));
                        if (inside.isPresent()) {
                            return inside;
                        }
                    }
                }
            }
            return Optional.empty();
        }

        private static String property(Method getter) {
            return Character.toLowerCase(getter.getName().charAt(3)) + getter.getName().substring(4);
        }

        private static Object called(Method getter, Object of) {
            try {
                return getter.invoke(of);
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
