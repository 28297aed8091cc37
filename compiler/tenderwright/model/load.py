"""Build the package from files whose shape has been checked; what is broken is left out, and its name kept."""

from __future__ import annotations

from tenderwright.model import (
    approvals,
    award,
    care,
    coating,
    contract,
    curves,
    docking_plan,
    evaluation,
    facility,
    facility_kept,
    funding,
    grant,
    history,
    in_dock,
    item,
    lightship,
    owner,
    particulars,
    profile,
    programme,
    question,
    rates,
    reserve,
    sections,
    ship_condition,
    tank,
    tender,
    timber,
    tow,
    vessel,
)
from tenderwright.model.account_sums import account_sums
from tenderwright.model.anode_families import with_families
from tenderwright.model.care_readings import all_care_readings
from tenderwright.model.choices import with_choices
from tenderwright.model.closing import Closing
from tenderwright.model.frame_table import frame_table
from tenderwright.model.frames_wanted import FRAMES, LENGTH, frames_wanted, length_between, length_wanted
from tenderwright.model.in_dock_sense import in_dock_sense
from tenderwright.model.loader import Loader, Mistakes, still
from tenderwright.model.package import NOTHING, Broken, Package
from tenderwright.model.resting_lines import with_resting_lines
from tenderwright.model.table_rows import with_row_lines
from tenderwright.model.withdrawn_lines import with_withdrawn_lines_apart
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable
from tenderwright.reading.package import Files
from tenderwright.shapes.todos import still_todo


def load_package(files: Files, mistakes: Mistakes) -> tuple[Package, list[Notice]]:
    """Build everything but the owner's papers."""
    loader = Loader(files, mistakes)
    frames = loader.file(FRAMES, vessel.Frames)
    loader.wanted_of_frames += (LENGTH,) if length_wanted(files) else ()
    if frames is not None:
        loader.frames, notices = frame_table(frames, length_between(files))
        if loader.frames is None and loader.wanted_of_frames:
            loader.wait(files.sources[FRAMES], loader.wanted_of_frames)
        elif loader.frames is None:
            loader.notices += notices
            loader.broken_files.add(FRAMES)
    elif FRAMES not in (*files.sources, *loader.broken_files):
        loader.notices += frames_wanted(files)
        if loader.notices:
            loader.broken_files.add(FRAMES)
        else:
            loader.frames = FrameTable([], [], length_between(files))
    items = [made for path, made in loader.folder("items", item.Item) if _numbered(path, made, loader.notices)]
    dockings = [made for _, made in loader.folder("history", history.EarlierDocking)]
    questions = [made for _, made in loader.folder("questions", question.Question)]
    readings, notices = all_care_readings([files.sources[path] for path in loader.read_in("care/")])
    loader.notices += notices
    package = Package(
        tender=loader.file("package.yaml", tender.Tender),
        particulars=loader.file("vessel/particulars.yaml", particulars.Particulars),
        frames=loader.frames,
        offsets=loader.file("vessel/offsets.yaml", vessel.Offsets),
        curves=loader.file("vessel/curves.yaml", curves.CurvesOfForm),
        sections=loader.file("vessel/sections.yaml", sections.Sections),
        lightship=loader.file("vessel/lightship.yaml", lightship.Lightship),
        docking_plan=loader.file("vessel/docking-plan.yaml", docking_plan.DockingPlan),
        condition=loader.file("vessel/condition.yaml", ship_condition.ShipCondition),
        timber=loader.file("vessel/timber.yaml", timber.Timber),
        contract=loader.file("contract.yaml", contract.Contract),
        tow=loader.file("tow.yaml", tow.Tow),
        care=loader.file("care/plan.yaml", care.CarePlan),
        care_readings=readings,
        drawings=loader.entries("drawings.yaml", "drawings", tender.Drawing),
        tanks=loader.entries("vessel/tanks.yaml", "tanks", tank.Tank),
        openings=loader.entries("vessel/openings.yaml", "openings", vessel.Opening),
        appendages=loader.entries("vessel/appendages.yaml", "appendages", vessel.Appendage),
        strakes=loader.entries("vessel/strakes.yaml", "strakes", vessel.Strake),
        zones=loader.entries("vessel/zones.yaml", "zones", coating.Zone),
        schemes=loader.entries("vessel/zones.yaml", "schemes", coating.Scheme),
        anodes=loader.entries("vessel/anodes.yaml", "anodes", vessel.Anode),
        anode_families=loader.entries("vessel/anodes.yaml", "families", vessel.AnodeFamily),
        history=tuple(sorted(dockings, key=lambda docking: docking.docked, reverse=True)),
        facilities=tuple(made for _, made in loader.folder("facilities", facility.Facility)),
        items=tuple(sorted(items, key=lambda made: made.item)),
        clauses=loader.clauses(),
        surveys=loader.surveys(),
        questions=tuple(sorted(questions, key=lambda asked: asked.question)),
        photographs=loader.photographs(),
        travelling=files.travelling,
        photograph_files=files.photographs,
        frame_notes=frames.notes if frames is not None else None,
        broken=loader.broken(),
        todos=still_todo(files.sources),
    )
    package, notices = with_row_lines(with_families(with_withdrawn_lines_apart(package)))
    for stage in (with_choices, with_resting_lines):
        package, more = stage(package)
        notices += more
    return package, list(dict.fromkeys([*loader.notices, *notices]))


def load_owner(files: Files, mistakes: Mistakes, above: Broken = NOTHING) -> tuple[owner.OwnerPapers, list[Notice]]:
    """Build the owner's papers from the files under owner/; `above` is what is broken in the package itself."""
    loader = Loader(files, mistakes)
    closings = _closings(loader, files)
    grants = dict(loader.folder("owner/grants", grant.Grant))
    profiles = _profiles(loader, files)
    papers = owner.OwnerPapers(
        rates=_rates(loader),
        funding=loader.file("owner/funding.yaml", funding.Funding),
        risks=loader.file("owner/risks.yaml", owner.Risks),
        indices=loader.file("owner/indices.yaml", rates.PriceIndices),
        reserve=loader.file("owner/reserve.yaml", reserve.Reserve),
        programme=loader.file("owner/programme.yaml", programme.Programme),
        scope=loader.file("owner/scope.yaml", funding.Scope),
        approvals=loader.file("owner/approvals.yaml", approvals.Approvals),
        taken_away=loader.file("owner/contract.yaml", contract.TakenAway),
        questions=loader.file("owner/questions.yaml", question.AskedBy),
        bids=dict(loader.folder("owner/bids", owner.Bid)),
        evaluation=loader.file("owner/evaluation.yaml", evaluation.Evaluation),
        award=loader.file("owner/award.yaml", award.Award),
        in_dock=_in_dock(loader),
        closings=closings,
        facilities=dict(loader.folder("owner/facilities", facility_kept.FacilityKept)),
        grants=grants,
        profiles=profiles,
        photographs=loader.photographs("owner/"),
        photograph_files=files.photographs,
        broken=above.joined(loader.broken()),
        todos=still_todo(files.sources),
    )
    return papers, loader.notices


def _rates(loader: Loader) -> rates.Rates | None:
    """Build the rates; those that are still `todo` are left out, each line by itself."""
    built = loader.file("owner/rates.yaml", rates.Rates)
    source = loader.files.sources.get("owner/rates.yaml")
    for at in source.todos if source is not None else ():
        if at[0] == "lines" and len(at) > 1:
            loader.waiting["rate", str(at[1])] = still(((source.path, at),)) if source is not None else ""
    return built


def _in_dock(loader: Loader) -> dict[str, in_dock.InDock]:
    """Build what was found, changed and done in dock; what does not fit together within a file is told."""
    built = dict(loader.folder("owner/in-dock", in_dock.InDock))
    for path, made in built.items():
        loader.notices += in_dock_sense(loader.files.sources[path], made)
    return built


def _profiles(loader: Loader, files: Files) -> dict[str, profile.Profile]:
    """Build the owner's own profiles, which go before those shipped; none where there is nothing to apply for."""
    if not any(path.startswith(("owner/grants/", "owner/profiles/")) for path in files.sources):
        return {}
    own = {made.name.name: made for _, made in loader.folder("owner/profiles", profile.Profile)}
    return profile.shipped_profiles() | own


def _closings(loader: Loader, files: Files) -> dict[str, Closing]:
    """Build what earlier dockings cost; an account that does not add up is told."""
    closings = dict(loader.folder("owner/closing", Closing))
    for path, made in closings.items():
        loader.notices += account_sums(files.sources[path], "lines", made.lines, made.changes, made.totals)
    return closings


def _numbered(path: str, made: item.Item, notices: list[Notice]) -> bool:
    name = path.rsplit("/", 1)[-1]
    if name.split("-")[0].removesuffix(".yaml") == made.number:
        return True
    notices.append(
        Notice(
            "file-number",
            made.here,
            f"the file is named `{name}` and holds item {made.item}",
            hints=(f"name it `{made.item}-….yaml`, or mend the number",),
        )
    )
    return True
