using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CapPrep.Service.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Decisions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<byte[]>(
                name: "bound",
                table: "jobs",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "made",
                table: "idempotency",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "ends",
                table: "decisions",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "finding",
                table: "decisions",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "machine",
                table: "decisions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<bool>(
                name: "one_job",
                table: "decisions",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "order_number",
                table: "decisions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "said",
                table: "decisions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<byte[]>(
                name: "seen",
                table: "decisions",
                type: "BLOB",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_decisions_shop_job",
                table: "decisions",
                columns: new[] { "shop", "job" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_decisions_shop_job",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "bound",
                table: "jobs");

            migrationBuilder.DropColumn(
                name: "made",
                table: "idempotency");

            migrationBuilder.DropColumn(
                name: "ends",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "finding",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "machine",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "one_job",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "order_number",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "said",
                table: "decisions");

            migrationBuilder.DropColumn(
                name: "seen",
                table: "decisions");
        }
    }
}
