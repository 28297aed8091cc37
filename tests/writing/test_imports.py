from __future__ import annotations

import subprocess
import sys
from pathlib import Path


def test_plain_writers_do_not_load_the_heavy_libraries() -> None:
    program = (
        "import sys\n"
        "from tenderwright.writing import archive, csv_table, html, json_file, manifest, outputs, price_form_sums\n"
        "from tenderwright.writing import pdf\n"
        "from tenderwright.writing.markdown import document\n"
        "from tenderwright.writing.word import document\n"
        "print(sorted({'weasyprint', 'openpyxl', 'fontTools', 'pikepdf', 'docx', 'lxml'} & set(sys.modules)))\n"
    )
    compiler = Path(__file__).parents[2] / "compiler"
    done = subprocess.run([sys.executable, "-c", program], cwd=compiler, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
