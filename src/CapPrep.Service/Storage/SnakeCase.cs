using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CapPrep.Service.Storage;

/// <summary>Gives columns, keys and indexes snake_case names, the same in both stores.</summary>
internal static class SnakeCase
{
    public static void Apply(IMutableModel model)
    {
        foreach (var entity in model.GetEntityTypes())
        {
            var table = entity.GetTableName()!;
            foreach (var property in entity.GetProperties())
                property.SetColumnName(Of(property.Name));
            foreach (var key in entity.GetKeys())
                key.SetName("pk_" + table);
            foreach (var index in entity.GetIndexes())
                index.SetDatabaseName($"ix_{table}_{string.Join('_', index.Properties.Select(column => Of(column.Name)))}");
        }
    }

    /// <summary><c>TapeSha</c> becomes <c>tape_sha</c>; digits stay with the word before them.</summary>
    public static string Of(string name)
    {
        var text = new StringBuilder(name.Length + 4);
        for (var i = 0; i < name.Length; i++)
        {
            if (i > 0 && char.IsUpper(name[i]) && !char.IsUpper(name[i - 1]))
                text.Append('_');
            text.Append(char.ToLowerInvariant(name[i]));
        }

        return text.ToString();
    }
}
