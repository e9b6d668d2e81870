package io.github.platenwire.commission;

import io.github.platenwire.commission.Token.Kind;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Pieces of many lines that mean the same. Not thread-safe. */
final class Column {
  private final Kind kind;
  private final Map<Integer, Token> byLine = new LinkedHashMap<>();
  private final Map<String, Integer> texts = new LinkedHashMap<>();

  Column(Kind kind) {
    this.kind = kind;
  }

  void put(int line, Token token) {
    byLine.put(line, token);
    texts.merge(token.text(), 1, Integer::sum);
  }

  /** Takes a line's token out again. */
  void remove(int line) {
    Token token = byLine.remove(line);
    if (token != null) {
      texts.computeIfPresent(token.text(), (text, count) -> count == 1 ? null : count - 1);
    }
  }

  Kind kind() {
    return kind;
  }

  @Nullable Token token(int line) {
    return byLine.get(line);
  }

  /** How many lines have it. */
  int count() {
    return byLine.size();
  }

  /** Its texts, each with how often it stands there, in the order of their first. */
  Map<String, Integer> texts() {
    return texts;
  }

  /** The texts of its own kind, line by line. */
  List<String> own() {
    return lines()
        .map(line -> Objects.requireNonNull(byLine.get(line)))
        .filter(token -> token.kind() == kind)
        .map(Token::text)
        .toList();
  }

  /** The different texts that are of another kind than the column. */
  List<String> strange() {
    return byLine.values().stream()
        .filter(token -> token.kind() != kind)
        .map(Token::text)
        .distinct()
        .toList();
  }

  /** The text that stands there most often. */
  String commonest() {
    return texts.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse("");
  }

  boolean isConstant() {
    return texts.size() == 1;
  }

  /** Length of all its texts, or 0 if they differ. */
  int width() {
    List<Integer> lengths = texts.keySet().stream().map(String::length).distinct().toList();
    return lengths.size() == 1 ? lengths.get(0) : 0;
  }

  private Stream<Integer> lines() {
    return byLine.keySet().stream().sorted();
  }

  /** What it costs to put a token here: 0 for one like those that are here already. */
  double costOf(Token token) {
    if (token.kind() == kind) {
      return switch (kind) {
        case NUMBER, TIME, CHECK -> 0;
        case WORD -> texts.containsKey(token.text()) ? 0 : 0.6;
        case DASHES, MARK -> texts.containsKey(token.text()) ? 0 : 1.2;
      };
    }
    if (kind == Kind.NUMBER) {
      return token.kind() == Kind.DASHES ? 0.8 : token.kind() == Kind.WORD ? 1.2 : 3;
    }
    boolean words = token.kind() == Kind.WORD || kind == Kind.WORD;
    boolean signs = token.kind() == Kind.MARK || kind == Kind.MARK;
    return (words && signs) || token.kind() == Kind.DASHES ? 1.2 : 3;
  }
}
