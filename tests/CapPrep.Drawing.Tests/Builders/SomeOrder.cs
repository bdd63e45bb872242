using CapPrep.Engine;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Drawing.Tests.Builders;

/// <summary>The crest as a flat design is often made, posts first and bottom line last, with the order worked out for it.</summary>
internal static class SomeOrder
{
    public static Tape FlatCrest()
    {
        var pen = new StitchPen();
        pen.TrimTo(-190, -120).Column(-190, -120, 25, 340).TrimTo(165, -120).Column(165, -120, 25, 340);
        pen.Stop().Fill(-150, -120, 300, 300).Stop();
        for (var letter = -3; letter <= 3; letter++)
            pen.TrimTo((letter * 80) - 25, -225).Column((letter * 80) - 25, -225, 15, 60).Column((letter * 80) - 10, -225, 35, 15);
        return pen.Tape();
    }

    public static Preparation Resequenced(Tape? tape = null) => With(Some.Sewn(tape ?? FlatCrest()), SewOrderMode.Always) with
    {
        Verdict = Verdict.SewResequenced,
    };

    public static Preparation NotUsed() => With(Some.Sewn(FlatCrest()), SewOrderMode.AsReceived);

    public static Preparation Held() => With(Some.Held(FlatCrest()), SewOrderMode.Always);

    private static Preparation With(Preparation made, SewOrderMode mode)
    {
        var stitches = StitchSequence.Of(made.Tape, 3);
        return made with
        {
            Order = SewOrderPlanner.Plan(new SewOrderRequest
            {
                Stitches = stitches,
                Reading = made.Reading,
                Placement = Placement.Of(made.Seating!),
                Budget = new OrderBudget
                {
                    ReceivedTrims = stitches.Relations.Count(Relation.Cut),
                    ReceivedColorChanges = stitches.Relations.Count(Relation.Stop),
                    TrimSeconds = 6,
                    ColorChangeSeconds = 10,
                    SewingSeconds = 120,
                    Loads = 6,
                },
                Limits = new OrderLimits(new Dictionary<string, ShareLimits>(), 0.1),
                Mode = mode,
            }),
        };
    }
}
