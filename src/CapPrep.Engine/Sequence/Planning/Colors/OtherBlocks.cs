namespace CapPrep.Engine.Sequence.Planning.Colors;

/// <summary>
/// Other ways to share the elements out over color blocks, one step from a known one. Blocks beside a stop for a
/// person's hands stay as they are.
/// </summary>
internal static class OtherBlocks
{
    /// <summary>One block more: each block cut behind every element of its order, and each text line by itself.</summary>
    internal static IEnumerable<int[]> Split(Coloring known)
    {
        var next = known.Table.Blocks.Max() + 1;
        return Movable(known).SelectMany(block => Beginnings(block).Concat(LinesIn(known.Table, block)))
            .Select(part => Moved(known.Table.Blocks, part, next));
    }

    /// <summary>One block fewer: two blocks of one thread become one.</summary>
    internal static IEnumerable<int[]> Merged(Coloring known) =>
        from pair in OfOneThread(known)
        where known.Table.Blocks[pair.One[0]] < known.Table.Blocks[pair.Other[0]]
        select WithoutGap(Moved(known.Table.Blocks, pair.Other, known.Table.Blocks[pair.One[0]]), known.Table.Blocks[pair.Other[0]]);

    /// <summary>As many blocks: an element, a beginning or an end of a block goes to another block of its thread.</summary>
    internal static IEnumerable<int[]> Exchanged(Coloring known) =>
        from pair in OfOneThread(known)
        where pair.One.Length > 1
        from part in pair.One.Select(element => new[] { element }).Concat(Beginnings(pair.One)).Concat(Ends(pair.One))
        select Moved(known.Table.Blocks, part, known.Table.Blocks[pair.Other[0]]);

    /// <summary>The blocks that may change, each in the order it is sewn.</summary>
    private static IEnumerable<int[]> Movable(Coloring known) => known.WantedOrder
        .GroupBy(element => known.Table.Blocks[element])
        .Where(block => !block.Any(known.Table.IsBesideStop))
        .Select(block => block.ToArray());

    private static IEnumerable<(int[] One, int[] Other)> OfOneThread(Coloring known)
    {
        int[][] blocks = [.. Movable(known)];
        return from one in blocks
               from other in blocks
               where one != other && ThreadOf(one) == ThreadOf(other)
               select (one, other);

        int ThreadOf(int[] block) => known.Table.Elements[block[0]].Thread;
    }

    private static IEnumerable<int[]> Beginnings(int[] block) => Enumerable.Range(1, block.Length - 1).Select(length => block[..length]);

    private static IEnumerable<int[]> Ends(int[] block) => Enumerable.Range(1, block.Length - 1).Select(from => block[from..]);

    private static IEnumerable<int[]> LinesIn(PlanningTable table, int[] block) => table.Subject.Lines.Lines
        .Select(line => block.Intersect(line.Select(place => place.Element)).ToArray())
        .Where(part => part.Length > 0 && part.Length < block.Length);

    private static int[] Moved(IReadOnlyList<int> blocks, int[] part, int to)
    {
        int[] moved = [.. blocks];
        foreach (var element in part)
            moved[element] = to;
        return moved;
    }

    private static int[] WithoutGap(int[] blocks, int gap) => [.. blocks.Select(block => block > gap ? block - 1 : block)];
}
