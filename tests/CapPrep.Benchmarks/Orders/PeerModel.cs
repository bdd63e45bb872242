using CapPrep.Engine.Sequence.Search;
using Google.OrTools.Sat;

namespace CapPrep.Benchmarks.Orders;

/// <summary>
/// The same problem in the words of another solver: which of two comes first, which follows right behind which, and no
/// circles. It knows nothing of the separation into blocks, nor of ideals.
/// </summary>
internal sealed class PeerModel
{
    private const int MostSeconds = 120;

    private readonly OrderProblem _problem;
    private readonly CpModel _model = new();
    private readonly BoolVar[,] _before;
    private readonly LinearExprBuilder _objective = LinearExpr.NewBuilder();

    private PeerModel(OrderProblem problem)
    {
        _problem = problem;
        _before = new BoolVar[problem.Count, problem.Count];
        Compare();
        ForbidCircles();
        KeepBlocksWhole();
        Follow();
        _model.Minimize(_objective);
    }

    /// <summary>The least sum of cost and trim price.</summary>
    /// <exception cref="InvalidOperationException">The solver did not prove a best order.</exception>
    internal static long LeastSum(OrderProblem problem)
    {
        var solver = new CpSolver { StringParameters = $"num_workers:1,random_seed:1,max_time_in_seconds:{MostSeconds}" };
        return solver.Solve(new PeerModel(problem)._model) is var status && status == CpSolverStatus.Optimal
            ? (long)Math.Round(solver.ObjectiveValue)
            : throw new InvalidOperationException($"The other solver ended with {status}.");
    }

    private void Compare()
    {
        for (var first = 0; first < _problem.Count; first++)
        {
            for (var second = 0; second < _problem.Count; second++)
            {
                if (first == second)
                    continue;
                _before[first, second] = _model.NewBoolVar($"{first} before {second}");
                _objective.AddTerm(_before[first, second], _problem.Order.Cost(first, second));
                if (_problem.Order.Precedence.Orders(first, second))
                    _model.Add(_before[first, second] == 1);
            }
        }

        foreach (var (first, second) in Pairs())
            _model.Add(_before[first, second] + _before[second, first] == 1);
    }

    private void ForbidCircles()
    {
        foreach (var (one, two) in Pairs())
        {
            for (var three = two + 1; three < _problem.Count; three++)
            {
                _model.Add(_before[one, two] + _before[two, three] + _before[three, one] <= 2);
                _model.Add(_before[one, three] + _before[three, two] + _before[two, one] <= 2);
            }
        }
    }

    /// <summary>What is outside a block comes before or after all of it.</summary>
    private void KeepBlocksWhole()
    {
        foreach (var (one, two) in Pairs().Where(pair => _problem.Block[pair.First] == _problem.Block[pair.Second]))
        {
            for (var other = 0; other < _problem.Count; other++)
            {
                if (_problem.Block[other] != _problem.Block[one])
                    _model.Add(_before[other, one] == _before[other, two]);
            }
        }
    }

    /// <summary>One way through all elements, begun and ended at a place of its own.</summary>
    private void Follow()
    {
        var circuit = _model.AddCircuit();
        for (var item = 0; item < _problem.Count; item++)
        {
            circuit.AddArc(_problem.Count, item, _model.NewBoolVar($"{item} first"));
            circuit.AddArc(item, _problem.Count, _model.NewBoolVar($"{item} last"));
        }

        foreach (var (one, two) in Pairs())
        {
            Follow(circuit, one, two);
            Follow(circuit, two, one);
        }
    }

    private void Follow(CircuitConstraint circuit, int first, int second)
    {
        var isInside = _problem.Block[first] == _problem.Block[second];
        var behind = _problem.Behind[(first * _problem.Count) + second];
        if (isInside && behind == Adjacency.Never)
            return;
        var follows = _model.NewBoolVar($"{second} behind {first}");
        circuit.AddArc(first, second, follows);
        _model.AddImplication(follows, _before[first, second]);
        if (isInside && behind == Adjacency.Trimmed)
            _objective.AddTerm(follows, _problem.TrimPrice);
    }

    private IEnumerable<(int First, int Second)> Pairs() =>
        from second in Enumerable.Range(0, _problem.Count)
        from first in Enumerable.Range(0, second)
        select (first, second);
}
