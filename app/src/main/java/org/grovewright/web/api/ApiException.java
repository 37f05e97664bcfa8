package org.grovewright.web.api;

import java.util.List;
import java.util.Optional;
import org.grovewright.texts.Sentence;
import org.grovewright.texts.ToldException;

/** A request that cannot be granted. */
public final class ApiException extends ToldException {
  private static final long serialVersionUID = 1L;

  private final int status;
  private final String code;
  private final String field;
  private final transient List<FieldProblem> problems;

  /**
   * One thing wrong with a description.
   *
   * @param field the field, such as {@code supply.flow_tests[0].time}; empty for the whole
   * @param line line of the text it stands on, from 1; 0 for none
   * @param column column of the text, from 1; 0 for none
   * @param message what is wrong
   */
  public record FieldProblem(String field, int line, int column, Sentence message) {}

  private ApiException(
      int status, String code, String field, List<FieldProblem> problems, Sentence sentence) {
    super(sentence);
    this.status = status;
    this.code = code;
    this.field = field;
    this.problems = problems;
  }

  /**
   * Trouble.
   *
   * @param status status of HTTP
   * @param code stable name of the trouble
   * @param shape the shape of a plain sentence for the owner
   * @param arguments what is filled into it
   */
  public ApiException(int status, String code, String shape, Object... arguments) {
    this(status, code, null, List.of(), Sentence.of(shape, arguments));
  }

  /**
   * A field of the request that cannot be used.
   *
   * @param field the field
   * @param shape the shape of a plain sentence for the owner
   * @param arguments what is filled into it
   */
  public static ApiException field(String field, String shape, Object... arguments) {
    return field(field, Sentence.of(shape, arguments));
  }

  /** A field of the request that cannot be used for this reason. */
  public static ApiException field(String field, Sentence sentence) {
    return new ApiException(422, "invalid", field, List.of(), sentence);
  }

  /** A description that cannot be used. */
  public static ApiException problems(List<FieldProblem> problems) {
    FieldProblem first = problems.get(0);
    return new ApiException(422, "invalid", first.field(), List.copyOf(problems), first.message());
  }

  /** Status of HTTP. */
  public int status() {
    return status;
  }

  /** Stable name of the trouble. */
  public String code() {
    return code;
  }

  /** The field it is about. */
  public Optional<String> field() {
    return Optional.ofNullable(field).filter(name -> !name.isEmpty());
  }

  /** Everything wrong with a description, if it is one. */
  public List<FieldProblem> problems() {
    return problems;
  }
}
