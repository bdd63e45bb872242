namespace CapPrep.Service.Docs.Operations;

/// <summary>The table of operations, a part for each slice.</summary>
internal static class AllOperations
{
    public static readonly IReadOnlyList<Operation> Listed =
    [
        .. JobOperations.All,
        .. DocumentOperations.All,
        .. DecisionOperations.All,
        .. CatalogOperations.All,
        .. AccessOperations.All,
        .. ServiceOperations.All,
    ];

    private static readonly Dictionary<string, Operation> ById = Listed.ToDictionary(operation => operation.Id, StringComparer.Ordinal);

    public static Operation? Find(string id) => ById.GetValueOrDefault(id);
}
