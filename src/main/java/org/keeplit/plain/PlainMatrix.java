package org.keeplit.plain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A square matrix of complex numbers, row by row, that keeps only what is not zero. It is solved by Gaussian elimination: the
 * next pivot is the largest of the shortest row that is left, so that a network is taken apart from its ends.
 */
final class PlainMatrix {
    private final List<Map<Integer, Cx>> rows = new ArrayList<>();

    PlainMatrix(int size) {
        for (int i = 0; i < size; i++) {
            rows.add(new HashMap<>());
        }
    }

    int size() {
        return rows.size();
    }

    PlainMatrix copy() {
        PlainMatrix copy = new PlainMatrix(size());
        for (int i = 0; i < size(); i++) {
            copy.rows.get(i).putAll(rows.get(i));
        }
        return copy;
    }

    Cx at(int row, int column) {
        return rows.get(row).getOrDefault(column, Cx.ZERO);
    }

    void add(int row, int column, Cx value) {
        rows.get(row).merge(column, value, Cx::plus);
    }

    PlainMatrix times(double factor) {
        PlainMatrix scaled = new PlainMatrix(size());
        for (int i = 0; i < size(); i++) {
            Map<Integer, Cx> row = scaled.rows.get(i);
            rows.get(i).forEach((column, value) -> row.put(column, value.times(factor)));
        }
        return scaled;
    }

    PlainMatrix inverse() {
        int n = size();
        Cx[][] units = new Cx[n][n];
        for (int i = 0; i < n; i++) {
            Arrays.fill(units[i], Cx.ZERO);
            units[i][i] = Cx.ONE;
        }
        Cx[][] columns = solve(units);
        PlainMatrix inverse = new PlainMatrix(n);
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                inverse.add(i, j, columns[j][i]);
            }
        }
        return inverse;
    }

    Cx[] solve(Cx[] right) {
        return solve(new Cx[][] {right})[0];
    }

    /** {@return what this matrix must be multiplied with to give each of some vectors; not a number if nothing does} */
    Cx[][] solve(Cx[][] rights) {
        Elimination done = new Elimination(this);
        return Arrays.stream(rights).map(done::answer).toArray(Cx[][]::new);
    }

    /** One elimination, done once and good for any right side. */
    static final class Elimination {
        private final List<Map<Integer, Cx>> rows;
        private final List<Set<Integer>> rowsWith = new ArrayList<>();
        private final List<Set<Integer>> byLength = new ArrayList<>();
        private final List<Taken> taken = new ArrayList<>();
        private final int[] pivotRow;
        private final int[] pivotColumn;

        /** So much of one row was taken from another. */
        private record Taken(int from, int row, Cx factor) {}

        Elimination(PlainMatrix matrix) {
            int n = matrix.size();
            this.rows = matrix.copy().rows;
            this.pivotRow = new int[n];
            this.pivotColumn = new int[n];
            for (int i = 0; i <= n; i++) {
                rowsWith.add(new HashSet<>());
                byLength.add(new HashSet<>());
            }
            for (int i = 0; i < n; i++) {
                int row = i;
                rows.get(i).keySet().forEach(column -> rowsWith.get(column).add(row));
                byLength.get(rows.get(i).size()).add(i);
            }
            for (int k = 0; k < n; k++) {
                eliminate(k);
            }
        }

        private void eliminate(int k) {
            int row = byLength.stream()
                    .filter(set -> !set.isEmpty())
                    .findFirst()
                    .orElseThrow()
                    .iterator()
                    .next();
            byLength.get(rows.get(row).size()).remove(row);
            int column = largest(rows.get(row), k);
            pivotRow[k] = row;
            pivotColumn[k] = column;
            rows.get(row).keySet().forEach(c -> rowsWith.get(c).remove(row));
            for (int other : List.copyOf(rowsWith.get(column))) {
                subtract(other, row, column);
            }
        }

        /** A row of nothing has no pivot, and what is not a number then spreads to the answers. */
        private static int largest(Map<Integer, Cx> row, int otherwise) {
            return row.entrySet().stream()
                    .max((a, b) -> Double.compare(a.getValue().size(), b.getValue().size()))
                    .map(Map.Entry::getKey)
                    .orElse(otherwise);
        }

        /** Takes as much of a row from another that the column is gone from it. */
        private void subtract(int from, int row, int column) {
            Map<Integer, Cx> target = rows.get(from);
            byLength.get(target.size()).remove(from);
            Cx factor = target.remove(column).over(rows.get(row).get(column));
            rowsWith.get(column).remove(from);
            rows.get(row).forEach((c, value) -> {
                if (c != column) {
                    target.merge(c, value.times(factor).times(-1), Cx::plus);
                    rowsWith.get(c).add(from);
                }
            });
            taken.add(new Taken(from, row, factor));
            byLength.get(target.size()).add(from);
        }

        Cx[] answer(Cx[] given) {
            Cx[] right = given.clone();
            for (Taken one : taken) {
                right[one.from] = right[one.from].minus(one.factor.times(right[one.row]));
            }
            Cx[] answer = new Cx[right.length];
            for (int k = right.length - 1; k >= 0; k--) {
                Map<Integer, Cx> row = rows.get(pivotRow[k]);
                Cx sum = right[pivotRow[k]];
                for (Map.Entry<Integer, Cx> one : row.entrySet()) {
                    if (one.getKey() != pivotColumn[k]) {
                        sum = sum.minus(one.getValue().times(answer[one.getKey()]));
                    }
                }
                answer[pivotColumn[k]] = sum.over(row.getOrDefault(pivotColumn[k], Cx.ZERO));
            }
            return answer;
        }
    }
}
