using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CapPrep.Service.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "attempts",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    delivery = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    address = table.Column<string>(type: "text", nullable: true),
                    tls = table.Column<string>(type: "text", nullable: true),
                    phases = table.Column<byte[]>(type: "bytea", nullable: false),
                    status = table.Column<int>(type: "integer", nullable: true),
                    outcome = table.Column<string>(type: "text", nullable: false),
                    excerpt = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attempts", x => new { x.shop, x.delivery, x.number });
                });

            migrationBuilder.CreateTable(
                name: "audit",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    action = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    target = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: true),
                    before_sha = table.Column<string>(type: "text", nullable: true),
                    after_sha = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "catalog",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    body = table.Column<byte[]>(type: "bytea", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    retired = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_catalog", x => new { x.shop, x.kind, x.id, x.version });
                });

            migrationBuilder.CreateTable(
                name: "counters",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_counters", x => new { x.shop, x.name });
                });

            migrationBuilder.CreateTable(
                name: "decisions",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    job = table.Column<string>(type: "text", nullable: false),
                    decision = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    rule = table.Column<string>(type: "text", nullable: true),
                    element = table.Column<int>(type: "integer", nullable: true),
                    received_stitches_sha = table.Column<string>(type: "text", nullable: false),
                    sewn_stitches_sha = table.Column<string>(type: "text", nullable: true),
                    cap_style = table.Column<string>(type: "text", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false),
                    technique = table.Column<string>(type: "text", nullable: false),
                    rule_book_version = table.Column<int>(type: "integer", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    ended = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_decisions", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "deliveries",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    @event = table.Column<string>(name: "event", type: "text", nullable: false),
                    target = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    next_at = table.Column<long>(type: "bigint", nullable: true),
                    lease_holder = table.Column<string>(type: "text", nullable: true),
                    lease_until = table.Column<long>(type: "bigint", nullable: true),
                    fence = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_deliveries", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "documents",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    content_type = table.Column<string>(type: "text", nullable: false),
                    encoding = table.Column<string>(type: "text", nullable: false),
                    length = table.Column<long>(type: "bigint", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_documents", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "drops",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    root = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    step = table.Column<string>(type: "text", nullable: false),
                    tape_sha = table.Column<string>(type: "text", nullable: true),
                    ticket_sha = table.Column<string>(type: "text", nullable: true),
                    job = table.Column<string>(type: "text", nullable: true),
                    tries = table.Column<int>(type: "integer", nullable: false),
                    seen = table.Column<long>(type: "bigint", nullable: false),
                    problem = table.Column<byte[]>(type: "bytea", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drops", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "endpoints",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    url = table.Column<string>(type: "text", nullable: false),
                    types = table.Column<string>(type: "text", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    state = table.Column<string>(type: "text", nullable: false),
                    secrets = table.Column<byte[]>(type: "bytea", nullable: false),
                    paused_until = table.Column<long>(type: "bigint", nullable: true),
                    failing_since = table.Column<long>(type: "bigint", nullable: true),
                    warned = table.Column<int>(type: "integer", nullable: false),
                    created = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_endpoints", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "events",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    position = table.Column<long>(type: "bigint", nullable: false),
                    type = table.Column<string>(type: "text", nullable: false),
                    sequence = table.Column<long>(type: "bigint", nullable: true),
                    previous_id = table.Column<string>(type: "text", nullable: true),
                    job = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<byte[]>(type: "bytea", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_events", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "idempotency",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    print = table.Column<string>(type: "text", nullable: false),
                    job = table.Column<string>(type: "text", nullable: false),
                    route = table.Column<string>(type: "text", nullable: false),
                    expires = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_idempotency", x => new { x.shop, x.key });
                });

            migrationBuilder.CreateTable(
                name: "job_documents",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    job = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    expires = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_job_documents", x => new { x.shop, x.job, x.kind });
                });

            migrationBuilder.CreateTable(
                name: "jobs",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<long>(type: "bigint", nullable: false),
                    status = table.Column<string>(type: "text", nullable: false),
                    verdict = table.Column<string>(type: "text", nullable: true),
                    order_number = table.Column<string>(type: "text", nullable: false),
                    line = table.Column<string>(type: "text", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false),
                    order_lines = table.Column<int>(type: "integer", nullable: true),
                    customer = table.Column<string>(type: "text", nullable: true),
                    cap_style = table.Column<string>(type: "text", nullable: true),
                    design = table.Column<string>(type: "text", nullable: false),
                    quantity = table.Column<int>(type: "integer", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    replaces = table.Column<string>(type: "text", nullable: true),
                    replaced_by = table.Column<string>(type: "text", nullable: true),
                    recheck_of = table.Column<string>(type: "text", nullable: true),
                    door = table.Column<string>(type: "text", nullable: false),
                    drop_id = table.Column<string>(type: "text", nullable: true),
                    file_name = table.Column<string>(type: "text", nullable: true),
                    tape_sha = table.Column<string>(type: "text", nullable: false),
                    stitches_sha = table.Column<string>(type: "text", nullable: false),
                    technique = table.Column<string>(type: "text", nullable: false),
                    digitizer = table.Column<string>(type: "text", nullable: true),
                    handed_at = table.Column<long>(type: "bigint", nullable: true),
                    ticket_received = table.Column<byte[]>(type: "bytea", nullable: false),
                    ticket_resolved = table.Column<byte[]>(type: "bytea", nullable: false),
                    inputs = table.Column<byte[]>(type: "bytea", nullable: false),
                    echo = table.Column<byte[]>(type: "bytea", nullable: true),
                    received = table.Column<long>(type: "bigint", nullable: false),
                    queued_at = table.Column<long>(type: "bigint", nullable: false),
                    started = table.Column<long>(type: "bigint", nullable: true),
                    finished = table.Column<long>(type: "bigint", nullable: true),
                    changed = table.Column<long>(type: "bigint", nullable: false),
                    position = table.Column<long>(type: "bigint", nullable: false),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    suspect = table.Column<bool>(type: "boolean", nullable: false),
                    lease_holder = table.Column<string>(type: "text", nullable: true),
                    lease_until = table.Column<long>(type: "bigint", nullable: true),
                    fence = table.Column<long>(type: "bigint", nullable: false),
                    failure = table.Column<byte[]>(type: "bytea", nullable: true),
                    outcome = table.Column<byte[]>(type: "bytea", nullable: true),
                    traceparent = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_jobs", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "keys",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    start = table.Column<string>(type: "text", nullable: false),
                    scopes = table.Column<string>(type: "text", nullable: false),
                    created = table.Column<long>(type: "bigint", nullable: false),
                    expires = table.Column<long>(type: "bigint", nullable: true),
                    ended = table.Column<long>(type: "bigint", nullable: true),
                    last_used = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_keys", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "leases",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    holder = table.Column<string>(type: "text", nullable: false),
                    until = table.Column<long>(type: "bigint", nullable: false),
                    fence = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_leases", x => new { x.shop, x.name });
                });

            migrationBuilder.CreateTable(
                name: "sewouts",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    job = table.Column<string>(type: "text", nullable: false),
                    station = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    body = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sewouts", x => new { x.shop, x.id });
                });

            migrationBuilder.CreateTable(
                name: "shops",
                columns: table => new
                {
                    shop = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shops", x => x.shop);
                });

            migrationBuilder.CreateIndex(
                name: "ix_audit_shop_at",
                table: "audit",
                columns: new[] { "shop", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_decisions_shop_received_stitches_sha",
                table: "decisions",
                columns: new[] { "shop", "received_stitches_sha" });

            migrationBuilder.CreateIndex(
                name: "ix_decisions_shop_sewn_stitches_sha",
                table: "decisions",
                columns: new[] { "shop", "sewn_stitches_sha" });

            migrationBuilder.CreateIndex(
                name: "ix_deliveries_event_target",
                table: "deliveries",
                columns: new[] { "event", "target" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_deliveries_id",
                table: "deliveries",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_deliveries_next_at",
                table: "deliveries",
                column: "next_at",
                filter: "state = 'Owed'");

            migrationBuilder.CreateIndex(
                name: "ix_deliveries_shop_target_state",
                table: "deliveries",
                columns: new[] { "shop", "target", "state" });

            migrationBuilder.CreateIndex(
                name: "ix_drops_shop_tape_sha_ticket_sha_seen",
                table: "drops",
                columns: new[] { "shop", "tape_sha", "ticket_sha", "seen" });

            migrationBuilder.CreateIndex(
                name: "ix_events_id",
                table: "events",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_events_shop_job",
                table: "events",
                columns: new[] { "shop", "job" });

            migrationBuilder.CreateIndex(
                name: "ix_events_shop_position",
                table: "events",
                columns: new[] { "shop", "position" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_events_shop_type_sequence",
                table: "events",
                columns: new[] { "shop", "type", "sequence" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_idempotency_expires",
                table: "idempotency",
                column: "expires");

            migrationBuilder.CreateIndex(
                name: "ix_job_documents_expires",
                table: "job_documents",
                column: "expires");

            migrationBuilder.CreateIndex(
                name: "ix_job_documents_sha256",
                table: "job_documents",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_jobs_id",
                table: "jobs",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_jobs_queued_at",
                table: "jobs",
                column: "queued_at",
                filter: "status IN ('Queued', 'Working')");

            migrationBuilder.CreateIndex(
                name: "ix_jobs_shop_drop_id",
                table: "jobs",
                columns: new[] { "shop", "drop_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_jobs_shop_number",
                table: "jobs",
                columns: new[] { "shop", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_jobs_shop_order_number_line_location_revision",
                table: "jobs",
                columns: new[] { "shop", "order_number", "line", "location", "revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_jobs_shop_position",
                table: "jobs",
                columns: new[] { "shop", "position" });

            migrationBuilder.CreateIndex(
                name: "ix_jobs_shop_stitches_sha",
                table: "jobs",
                columns: new[] { "shop", "stitches_sha" });

            migrationBuilder.CreateIndex(
                name: "ix_keys_hash",
                table: "keys",
                column: "hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_leases_name",
                table: "leases",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_sewouts_shop_job",
                table: "sewouts",
                columns: new[] { "shop", "job" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "attempts");

            migrationBuilder.DropTable(
                name: "audit");

            migrationBuilder.DropTable(
                name: "catalog");

            migrationBuilder.DropTable(
                name: "counters");

            migrationBuilder.DropTable(
                name: "decisions");

            migrationBuilder.DropTable(
                name: "deliveries");

            migrationBuilder.DropTable(
                name: "documents");

            migrationBuilder.DropTable(
                name: "drops");

            migrationBuilder.DropTable(
                name: "endpoints");

            migrationBuilder.DropTable(
                name: "events");

            migrationBuilder.DropTable(
                name: "idempotency");

            migrationBuilder.DropTable(
                name: "job_documents");

            migrationBuilder.DropTable(
                name: "jobs");

            migrationBuilder.DropTable(
                name: "keys");

            migrationBuilder.DropTable(
                name: "leases");

            migrationBuilder.DropTable(
                name: "sewouts");

            migrationBuilder.DropTable(
                name: "shops");
        }
    }
}
