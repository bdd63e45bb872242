using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Tapes;

/// <summary>What holds for every tape, on generated ones.</summary>
public sealed class TapeProperties
{
    private static readonly Gen<RecordKind> Kind = Gen.Frequency(
        (12, Gen.Const(RecordKind.Stitch)), (4, Gen.Const(RecordKind.Jump)), (1, Gen.Const(RecordKind.ColorStop)));

    private static readonly Gen<int> Step = Gen.Frequency(
        (6, Gen.Int[-50, 50]), (1, Gen.Int[-400, 400]), (1, Gen.Const(0)));

    /// <summary>Moves with at least one stitch among them.</summary>
    private static readonly Gen<TapeMove[]> Moves =
        from steps in Gen.Select(Kind, Step, Step).Array[1, 120]
        select Absolute([.. steps, (RecordKind.Stitch, 3, 4)]);

    private static readonly Gen<RepairSettings> Settings =
        from start in Gen.Select(Gen.Int[-500, 500], Gen.Int[-500, 500])
        from hasStart in Gen.Bool
        from turn in Gen.Bool
        from trimBy in Gen.Enum<TrimBy>()
        from trimJumps in Gen.Int[1, 8]
        from pattern in Gen.Enum<TrimPattern>()
        select new RepairSettings
        {
            Label = "10427",
            StartAndEnd = hasStart ? new(start.Item1, start.Item2) : null,
            Turn180 = turn,
            TrimBy = trimBy,
            TrimJumps = trimJumps,
            TrimPattern = pattern,
        };

    [Fact]
    public void What_is_written_reads_back_equal() => Moves.Sample(
        moves =>
        {
            var file = TapeBuilder.Of(moves);
            var tape = Read(file);
            var other = OtherTapeReader.Read(file);
            var needle = moves.Where(move => move.Kind == RecordKind.Stitch).Select(move => move.To).ToList();

            Penetrations(tape).ShouldBe(needle);
            other.Penetrations.ShouldBe(needle.Select(point => (point.X, point.Y)));
            other.Stops.ShouldBe(moves.Count(move => move.Kind == RecordKind.ColorStop));
            other.End.ShouldBe((moves[^1].To.X, moves[^1].To.Y));
            tape.Header.Records.ShouldBe(other.Records);
            tape.Quirks.ShouldNotContain(quirk => quirk.Rule.StartsWith("tape.header") || quirk.Rule == TapeRules.NoEnd);
        },
        iter: 400,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void No_written_record_moves_farther_than_allowed() => Gen.Select(Moves, Gen.Int[1, 121]).Sample(
        (moves, maxMove) =>
        {
            var file = TapeWriter.Write(new("X", moves) { MaxMove = maxMove });
            OtherTapeReader.Read(file).LargestMove.ShouldBeLessThanOrEqualTo(maxMove);
            Penetrations(Read(file)).ShouldBe(moves.Where(move => move.Kind == RecordKind.Stitch).Select(move => move.To));
        },
        iter: 300,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Both_readers_agree_on_damaged_tapes() => Gen.Select(
        Moves, Gen.Select(Gen.Int[0, 1 << 20], Gen.Byte).Array[0, 6], Gen.Int[0, 12]).Sample(
        (moves, damage, lost) =>
        {
            var file = TapeBuilder.Of(moves);
            foreach (var (place, value) in damage)
                file[512 + (place % (file.Length - 512))] = value;
            file = file[..^Math.Min(lost, file.Length - 515)];
            if (TapeReader.Read(file, TapeReading.Standard).Value is { } tape)
                ShouldAgree(tape, OtherTapeReader.Read(file));
        },
        iter: 2000,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Reading_never_throws() => Gen.Select(Gen.Byte.Array[0, 1500], Gen.Bool).Sample(
        (noise, withHeader) =>
        {
            byte[] file = withHeader ? [.. RawTape.Header(noise.Length / 3), .. noise] : noise;
            var read = TapeReader.Read(file, TapeReading.Standard);
            (read.Succeeded ^ read.Violations.Count > 0).ShouldBeTrue();
        },
        iter: 4000,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void A_repaired_tape_keeps_every_stitch_and_has_a_sound_container() => Gen.Select(Moves, Settings).Sample(
        (moves, settings) =>
        {
            var received = Read(TapeBuilder.Of(moves).WithoutEnd().WithHeader("CO", "99"), settings.TrimJumps);

            var sew = TapeRepair.Rewrite(received, settings);

            var other = OtherTapeReader.Read(sew.Bytes);
            var sign = settings.Turn180 ? -1 : 1;
            sew.StitchesEqual.ShouldBeTrue();
            other.Penetrations.Select(p => new TapePoint(sign * p.X, sign * p.Y) + sew.OriginShift).ShouldBe(Penetrations(received));
            other.LargestMove.ShouldBeLessThanOrEqualTo(121);
            Read(sew.Bytes, settings.TrimJumps).Quirks.Select(quirk => quirk.Rule).Intersect(TapeRules.OfContainer).ShouldBeEmpty();
            if (settings.StartAndEnd is not null)
                other.End.ShouldBe((0, 0));
        },
        iter: 500,
        seed: "0N0XIzNsQ0O2");

    private static TapeMove[] Absolute(IEnumerable<(RecordKind Kind, int Dx, int Dy)> steps)
    {
        var at = TapePoint.Origin;
        return [.. steps.Select(step => new TapeMove(step.Kind, at += new TapePoint(step.Dx, step.Dy)))];
    }

    private static Tape Read(byte[] bytes, int trimJumps = 3)
    {
        ReadResult<Tape> read = TapeReader.Read(bytes, new() { TrimJumps = trimJumps });
        return read.Value.ShouldNotBeNull();
    }

    private static List<TapePoint> Penetrations(Tape tape)
    {
        var sequence = StitchSequence.Of(tape, 3);
        return [.. Enumerable.Range(0, sequence.Count).Select(sequence.At)];
    }

    private static void ShouldAgree(Tape tape, OtherTape other)
    {
        tape.RecordCount.ShouldBe(other.Records);
        tape.Ending.HasEndRecord.ShouldBe(other.HasEndRecord);
        tape.Kinds.ToArray().Count(kind => kind == RecordKind.Jump).ShouldBe(other.Jumps);
        tape.Kinds.ToArray().Count(kind => kind == RecordKind.ColorStop).ShouldBe(other.Stops);
        Penetrations(tape).Select(point => (point.X, point.Y)).ShouldBe(other.Penetrations);
        (tape.X[^1], tape.Y[^1]).ShouldBe(other.End);
    }
}
