namespace CapPrep.Engine.Checks;

/// <summary>Gathers needle points that pass a limit one after the other into one occurrence each run.</summary>
internal static class PointRuns
{
    /// <param name="subject">A seated design.</param>
    /// <param name="limits">Decide which points pass, and which of a run is the worst.</param>
    /// <param name="measure">The measured value of a needle point counted from 0, null when it is not concerned.</param>
    internal static IEnumerable<Occurrence> Of(Subject subject, Limits limits, Func<int, double?> measure) =>
        Of(subject, _ => limits, measure);

    /// <param name="subject">A seated design.</param>
    /// <param name="limitsAt">The limits at a needle point counted from 0.</param>
    /// <param name="measure">The measured value of a needle point counted from 0, null when it is not concerned.</param>
    internal static IEnumerable<Occurrence> Of(Subject subject, Func<int, Limits> limitsAt, Func<int, double?> measure)
    {
        var run = new Run(subject);
        for (var i = 0; i < subject.Stitches.Count; i++)
        {
            var measured = measure(i);
            var limits = limitsAt(i);
            if (measured is { } value && limits.PassedBy(value) is { } passed)
                run.Add(i, value, passed, limits);
            else if (run.End() is { } ended)
                yield return ended;
        }

        if (run.End() is { } last)
            yield return last;
    }

    private sealed class Run(Subject subject)
    {
        private int _first;
        private int _last;
        private double _measured;
        private PassedLimit? _worst;

        internal void Add(int point, double measured, PassedLimit passed, Limits limits)
        {
            if (_worst is null)
                _first = point;
            _last = point;
            if (_worst is null || passed.Level > _worst.Level || (passed.Level == _worst.Level && limits.IsWorse(measured, _measured)))
                (_worst, _measured) = (passed, measured);
        }

        internal Occurrence? End()
        {
            if (_worst is not { } worst)
                return null;
            _worst = null;
            return new Occurrence(subject.PlaceOf(_first, _last))
            {
                Measured = _measured,
                Level = worst.Level,
                LimitHere = worst.Value,
            };
        }
    }
}
