using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Measures the bare cloth between letters along their line, level by level of 0.25 mm.</summary>
internal sealed class Gaps(Curve curve, Levels levels)
{
    // A stitch is looked at every 0.2 mm.
    private const int Step = 2;

    /// <summary>To the next letter, mm, below 0 where they overlap; null for the last.</summary>
    public IReadOnlyList<double?> Of(IReadOnlyList<Letter> letters, IReadOnlyList<IReadOnlyList<Stretch>> threads)
    {
        Profile[] profiles = [.. threads.Select(ProfileOf)];
        return
        [
            .. letters.Select((letter, index) => index == letters.Count - 1
                ? (double?)null
                : Fine.Millimeters(profiles[index].GapTo(profiles[index + 1]) ?? (letters[index + 1].Group.Reach.From - letter.Group.Reach.To))),
        ];
    }

    private Profile ProfileOf(IReadOnlyList<Stretch> threads)
    {
        var profile = new Profile(levels);
        foreach (var thread in threads)
        {
            var way = thread.To - thread.From;
            var steps = Math.Max(1, (way.Reach + Step - 1) / Step);
            for (var k = 0; k <= steps; k++)
            {
                var frame = curve.At(thread.From + new TapePoint(way.X * k / steps, way.Y * k / steps));
                profile.Put(Frame.Whole(frame.Along), Frame.Whole(frame.Up));
            }
        }

        return profile;
    }

    /// <summary>How far a letter reaches to both sides on every level from the depth of descenders to the height of capitals.</summary>
    private sealed class Profile
    {
        private const int Level = Fine.PerMillimeter / Cover.CellsPerMillimeter;

        private readonly int _lowest;
        private readonly int[] _left;
        private readonly int[] _right;

        public Profile(Levels levels)
        {
            _lowest = -(levels.High / 2 / Level);
            var count = (levels.High * 3 / 2 / Level) - _lowest + 1;
            (_left, _right) = (new int[count], new int[count]);
            _left.AsSpan().Fill(int.MaxValue);
            _right.AsSpan().Fill(int.MinValue);
        }

        public void Put(int along, int up)
        {
            var level = (int)Math.Floor((double)up / Level) - _lowest;
            if (level < 0 || level >= _left.Length)
                return;
            _left[level] = Math.Min(_left[level], along);
            _right[level] = Math.Max(_right[level], along);
        }

        /// <summary>The least on any level that both reach, sixteenths of a tape unit; null when there is none.</summary>
        public int? GapTo(Profile next)
        {
            int? least = null;
            for (var level = 0; level < _left.Length; level++)
            {
                if (_right[level] == int.MinValue || next._left[level] == int.MaxValue)
                    continue;
                var gap = next._left[level] - _right[level];
                least = least is { } known ? Math.Min(known, gap) : gap;
            }

            return least;
        }
    }
}
