package org.grovewright.texts;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.lang.model.element.Element;
import javax.lang.model.element.ExecutableElement;
import javax.lang.model.element.VariableElement;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * All shapes of sentences that the program can tell, read from its own source: whatever is handed
 * to a parameter of type {@code String} that is called {@code shape}, or ends so.
 */
final class Shapes {
  private static final Pattern PLACE = Pattern.compile("\\{[0-9]{1,2}\\}");
  private static final Path SOURCE = Path.of("src", "main", "java");

  private final Trees trees;
  private final Map<String, String> found = new TreeMap<>();
  private final List<String> unreadable = new ArrayList<>();

  private Shapes(Trees trees) {
    this.trees = trees;
  }

  /** Reads the source of this module. */
  static Shapes read() {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager manager =
            compiler.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8);
        Stream<Path> files = Files.walk(SOURCE)) {
      List<Path> sources =
          files
              .filter(file -> file.toString().endsWith(".java"))
              .filter(file -> !file.endsWith("module-info.java"))
              .toList();
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  manager,
                  problem -> {},
                  List.of(
                      "-proc:none",
                      "-classpath",
                      System.getProperty(
                          "surefire.test.class.path", System.getProperty("java.class.path"))),
                  null,
                  manager.getJavaFileObjectsFromPaths(sources));
      Shapes shapes = new Shapes(Trees.instance(task));
      List<CompilationUnitTree> units = new ArrayList<>();
      task.parse().forEach(units::add);
      task.analyze();
      // What makes the sentences takes its words from whoever asks for one.
      units.stream()
          .filter(unit -> !unit.getSourceFile().getName().endsWith("Sentence.java"))
          .forEach(unit -> shapes.new Scanner().scan(unit, null));
      return shapes;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every shape, with a place where it is told. */
  Map<String, String> found() {
    return found;
  }

  /** The places of a text in which something is filled in. */
  static Set<String> places(String text) {
    return PLACE
        .matcher(text)
        .results()
        .map(place -> place.group())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /**
   * Places that hand on something whose words cannot be read from the source, or that do not fill
   * in as much as there is to fill in.
   */
  List<String> unreadable() {
    return unreadable;
  }

  /** Looks at every call. */
  private final class Scanner extends TreePathScanner<Void, Void> {
    @Override
    public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
      look(call, call.getArguments());
      return super.visitMethodInvocation(call, nothing);
    }

    @Override
    public Void visitNewClass(NewClassTree call, Void nothing) {
      look(call, call.getArguments());
      return super.visitNewClass(call, nothing);
    }

    private void look(Tree call, List<? extends ExpressionTree> arguments) {
      if (!(trees.getElement(getCurrentPath()) instanceof ExecutableElement called)) {
        return;
      }
      List<? extends VariableElement> parameters = called.getParameters();
      for (int i = 0; i < Math.min(parameters.size(), arguments.size()); i++) {
        if (isShape(parameters.get(i))) {
          boolean filled = called.isVarArgs() && i == parameters.size() - 2;
          int given = filled ? arguments.size() - i - 1 : -1;
          take(arguments.get(i), given, called + " in " + place(call));
        }
      }
    }

    private String place(Tree tree) {
      var unit = getCurrentPath().getCompilationUnit();
      long start = trees.getSourcePositions().getStartPosition(unit, tree);
      return unit.getSourceFile().getName() + ":" + unit.getLineMap().getLineNumber(start);
    }

    /**
     * Takes a shape.
     *
     * @param given how many arguments are filled in, -1 where others do that
     */
    private void take(ExpressionTree argument, int given, String place) {
      if (argument instanceof ConditionalExpressionTree choice) {
        take(choice.getTrueExpression(), given, place);
        take(choice.getFalseExpression(), given, place);
        return;
      }
      if (argument instanceof ParenthesizedTree inner) {
        take(inner.getExpression(), given, place);
        return;
      }
      // One that was handed to us as a shape was read where it was handed over.
      Element named = trees.getElement(new TreePath(getCurrentPath(), argument));
      if (named != null && isShape(named)) {
        return;
      }
      StringBuilder words = new StringBuilder();
      if (constant(argument, words)) {
        found.putIfAbsent(words.toString(), place);
        if (given >= 0 && given != places(words.toString()).size()) {
          unreadable.add(place + ": " + given + " arguments for '" + words + "'");
        }
      } else {
        unreadable.add(place + ": " + argument);
      }
    }

    private boolean constant(ExpressionTree tree, StringBuilder words) {
      if (tree instanceof LiteralTree literal) {
        words.append(literal.getValue());
        return true;
      }
      if (tree instanceof BinaryTree sum) {
        return constant(sum.getLeftOperand(), words) && constant(sum.getRightOperand(), words);
      }
      if (tree instanceof ParenthesizedTree inner) {
        return constant(inner.getExpression(), words);
      }
      Element named = trees.getElement(new TreePath(getCurrentPath(), tree));
      if (named instanceof VariableElement variable && variable.getConstantValue() != null) {
        words.append(variable.getConstantValue());
        return true;
      }
      return false;
    }
  }

  /** Whether something is a shape: a parameter, a field, or what reads the part of a record. */
  private static boolean isShape(Element named) {
    String name = named.getSimpleName().toString();
    String type =
        named instanceof ExecutableElement method
            ? method.getReturnType().toString()
            : named.asType().toString();
    return (name.equals("shape") || name.endsWith("Shape")) && type.equals("java.lang.String");
  }
}
