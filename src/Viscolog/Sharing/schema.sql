-- What the benches share, version 1. Run once, as the owner of the database:
--   viscolog share setup | psql DATABASE
-- Benches only add lines and read them; nobody changes or deletes one.

begin;

do $$ begin
  if not exists (select from pg_roles where rolname = 'viscolog_bench') then
    create role viscolog_bench nologin;
  end if;
end $$;

create schema viscolog;

create table viscolog.about (version int not null);
insert into viscolog.about values (1);

-- A bench: the log that it keeps, and the role that may add to it.
create table viscolog.bench (
  log uuid primary key,
  name text not null unique check (length(name) between 1 and 60),
  owner name not null default current_user,
  joined timestamptz not null default now()
);

-- What a bench shows to be the one that joined; the latest counts.
create table viscolog.bench_key (
  log uuid not null references viscolog.bench,
  number int not null check (number > 0),
  sha256 bytea not null check (octet_length(sha256) = 32),
  since timestamptz not null default now(),
  primary key (log, number)
);

-- The lines of the journals, each as it stands there, with its checksum.
create table viscolog.line (
  log uuid not null references viscolog.bench,
  life int not null check (life > 0),
  number bigint not null check (number > 0),
  text text not null check (octet_length(text) <= 1048576),
  sent timestamptz not null default now(),
  primary key (log, life, number)
);

-- Practice games of a class, each as its file has it.
create table viscolog.game (
  id uuid primary key,
  log uuid not null references viscolog.bench,
  result text not null check (octet_length(result) <= 65536)
);

alter table viscolog.bench enable row level security;
alter table viscolog.bench_key enable row level security;
alter table viscolog.line enable row level security;
alter table viscolog.game enable row level security;

create policy bench_read on viscolog.bench for select to viscolog_bench using (true);
create policy bench_join on viscolog.bench for insert to viscolog_bench with check (owner = current_user);
create policy key_read on viscolog.bench_key for select to viscolog_bench using (true);
create policy key_add on viscolog.bench_key for insert to viscolog_bench
  with check (exists (select from viscolog.bench b where b.log = bench_key.log and b.owner = current_user));
create policy line_read on viscolog.line for select to viscolog_bench using (true);
create policy line_add on viscolog.line for insert to viscolog_bench
  with check (exists (select from viscolog.bench b where b.log = line.log and b.owner = current_user));
create policy game_read on viscolog.game for select to viscolog_bench using (true);
create policy game_add on viscolog.game for insert to viscolog_bench
  with check (exists (select from viscolog.bench b where b.log = game.log and b.owner = current_user));

grant usage on schema viscolog to viscolog_bench;
grant select on viscolog.about to viscolog_bench;
grant select, insert on viscolog.bench, viscolog.bench_key, viscolog.line, viscolog.game to viscolog_bench;

-- A line's record. One that is no JSON is null: a single bad line must not stop a report.
create function viscolog.record(text text) returns jsonb language plpgsql immutable as $$
begin
  return substring(text from '^[0-9]+ (.*) [0-9a-f]{8}$')::jsonb;
exception when others then
  return null;
end $$;

-- For reports: every record of the life that each bench is in, with when it was logged; inside a batch the batch says so.
create view viscolog.records as
  select b.name as bench, l.log, l.number, r.record, l.sent,
    (max(case when r.record ->> 'kind' = 'batch' then lpad(l.number::text, 20, '0') || (r.record ->> 'at') end)
      over (partition by l.log order by l.number)) as batch
  from viscolog.bench b
  join viscolog.line l on l.log = b.log
    and l.life = (select max(life) from viscolog.line where log = b.log)
  cross join lateral (select viscolog.record(l.text) as record) r
  where r.record is not null;

-- Each run with its header as it was stated last.
create view viscolog.runs as
  select distinct on (log, run) bench, log, run, run_id, name, product, base, thickeners, target_mpas, tolerance_pct, logged
  from (
    select bench, log, number, (record ->> 'run')::int as run, record ->> 'id' as run_id,
      (select substring(h from '^name: (.*)$') from jsonb_array_elements_text(record -> 'header') h where h like 'name: %' limit 1) as name,
      (select substring(h from '^product: (.*)$') from jsonb_array_elements_text(record -> 'header') h where h like 'product: %' limit 1)
        as product,
      (select substring(h from '^base: (.*)$') from jsonb_array_elements_text(record -> 'header') h where h like 'base: %' limit 1) as base,
      (select string_agg(split_part(substring(h from '^thickener: (.*)$'), ';', 1), ', ')
        from jsonb_array_elements_text(record -> 'header') h where h like 'thickener: %') as thickeners,
      (select substring(h from '^target_mpas: ([0-9.]+)$')::numeric from jsonb_array_elements_text(record -> 'header') h
        where h like 'target_mpas: %' limit 1) as target_mpas,
      (select substring(h from '^tolerance_pct: ([0-9.]+)$')::numeric from jsonb_array_elements_text(record -> 'header') h
        where h like 'tolerance_pct: %' limit 1) as tolerance_pct,
      coalesce(record ->> 'at', substr(batch, 21)) as logged
    from viscolog.records
    where record ->> 'kind' = 'run' and jsonb_typeof(record -> 'header') = 'array' and record ->> 'run' ~ '^[0-9]{1,9}$'
  ) stated
  order by log, run, number desc;

-- Each row that counts: what went in and what was read.
create view viscolog.readings as
  select r.bench, r.log, u.run_id, u.name, u.product, (r.record ->> 'run')::int as run, (r.record ->> 'row')::int as row,
    coalesce(r.record -> 'is' ->> 'time', r.record ->> 'at', substr(r.batch, 21)) as at,
    r.record -> 'is' ->> 'thickener' as thickener, r.record -> 'is' -> 'added_g' as added_g,
    r.record -> 'is' -> 'viscosity_mpas' as viscosity_mpas, r.record -> 'is' -> 'wait_s' as wait_s,
    r.record -> 'is' -> 'temp_c' as temp_c, r.record -> 'is' -> 'ph' as ph, r.record -> 'is' -> 'string_mm' as string_mm,
    r.record -> 'is' as cells
  from viscolog.records r
  join viscolog.runs u on u.log = r.log and u.run = (r.record ->> 'run')::int
  where r.record ->> 'kind' = 'row' and r.record ->> 'run' ~ '^[0-9]{1,9}$' and r.record ->> 'row' ~ '^[0-9]{1,9}$'
    and r.record -> 'is' ->> 'void' is null
    and not coalesce((
      select v.record ->> 'kind' = 'void' from viscolog.records v
      where v.log = r.log and v.record ->> 'kind' in ('void', 'void-lifted')
        and v.record -> 'run' = r.record -> 'run' and v.record -> 'row' = r.record -> 'row'
      order by v.number desc limit 1), false);

-- The last direct reading of each run against its target. The program's own verdict allows for scatter and settling; this one does not.
create view viscolog.verdicts as
  select distinct on (log, run) bench, log, run, run_id, name, product, at, viscosity, target_mpas, tolerance_pct,
    case when target_mpas is null then null
      when viscosity < target_mpas * (1 - coalesce(tolerance_pct, 15) / 100) then 'below'
      when viscosity > target_mpas * (1 + coalesce(tolerance_pct, 15) / 100) then 'above'
      else 'inside' end as last_reading
  from (
    select d.bench, d.log, d.run, d.run_id, d.name, d.product, d.at, d.row, (d.viscosity_mpas #>> '{}')::numeric as viscosity,
      u.target_mpas, u.tolerance_pct
    from viscolog.readings d join viscolog.runs u on u.log = d.log and u.run = d.run
    where jsonb_typeof(d.viscosity_mpas) = 'number' or d.viscosity_mpas #>> '{}' ~ '^[0-9]+([.][0-9]+)?$'
  ) read
  order by log, run, row desc;

-- The same by product, over all benches, in the order of time.
create view viscolog.trends as
  select product, at, bench, name, viscosity as viscosity_mpas, last_reading from viscolog.verdicts
  where product is not null order by product, at;

grant select on viscolog.records, viscolog.runs, viscolog.readings, viscolog.verdicts, viscolog.trends to viscolog_bench;

commit;
