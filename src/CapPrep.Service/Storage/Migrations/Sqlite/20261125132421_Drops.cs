using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CapPrep.Service.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Drops : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<long>(
                name: "ended",
                table: "drops",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "files",
                table: "drops",
                type: "BLOB",
                nullable: false,
                defaultValue: new byte[0]);

            migrationBuilder.CreateIndex(
                name: "ix_drops_shop_root_state_ended",
                table: "drops",
                columns: new[] { "shop", "root", "state", "ended" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_drops_shop_root_state_ended",
                table: "drops");

            migrationBuilder.DropColumn(
                name: "ended",
                table: "drops");

            migrationBuilder.DropColumn(
                name: "files",
                table: "drops");
        }
    }
}
