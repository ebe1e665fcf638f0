#!/usr/bin/env python3
"""Plants one fault after the other in a small tree and fails if the checks do not find it, or find one where none is."""
import pathlib
import sys
import tempfile

import check_layers
import check_source

CHECKS = {"layers": check_layers, "source": check_source}
CLEAN = {
    "core/CMakeLists.txt": "core_layer(base)\ncore_layer(gate core_base)\n",
    "app/CMakeLists.txt": "app_layer(walk app_shared)\n",
    "core/gate/gate.cpp": '#include "core/base/text.h"\n#include "core/gate/gate.h"\n\n#include <string>\n',
    "core/load/document.cpp": '#include "core/tree/tree.h"\n\n#include <yaml-cpp/eventhandler.h>\n',
    "app/store/book.cpp": '#include "core/session/event.h"\n\n#include <QSqlDatabase>\n#include <QString>\n',
    "app/walk/page.cpp": '#include "app/draw/sign.h"\n\n#include <QWidget>\n',
    "app/shared/label.cpp": "Label::Label() : QLabel(nullptr) { setTextFormat(Qt::PlainText); setToolTip(text.toHtmlEscaped()); } // not setHtml(\n",
    "tests/core/a_test.cpp": "// std::cout is allowed in tests\nint main() { std::locale::global(std::locale()); }\n",
}
# (check, file, what is added to it)
PLANTED = [
    ("layers", "core/gate/gate.cpp", '#include "core/tree/tree.h"'),
    ("layers", "core/gate/gate.cpp", '#include "core/session/session.h"'),
    ("layers", "core/gate/gate.cpp", "#include <QString>"),
    ("layers", "core/gate/gate.cpp", '#include "gate.h"'),
    ("layers", "core/gate/gate.cpp", "#include <yaml-cpp/yaml.h>"),
    ("layers", "core/belief/belief.cpp", '#include "core/load/load.h"'),
    ("layers", "core/tree/tree.cpp", '#include "core/reading/reading.h"'),
    ("layers", "core/session/session.cpp", '#include "app/store/job_log.h"'),
    ("layers", "core/news/news.cpp", '#include "core/base/text.h"'),
    ("layers", "app/walk/page.cpp", '#include "app/counter/page.h"'),
    ("layers", "app/shared/label.cpp", '#include "app/walk/page.h"'),
    ("layers", "app/walk/page.cpp", "#include <QSqlQuery>"),
    ("layers", "app/store/book.cpp", "#include <QMessageBox>"),
    ("layers", "app/cli/main.cpp", '#include "app/walk/page.h"'),
    ("layers", "core/CMakeLists.txt", "core_layer(gate core_tree)"),
    ("source", "core/gate/gate.cpp", "auto x = std::stod(text);"),
    ("source", "core/load/document.cpp", "auto x = node.as<double>();"),
    ("source", "core/gate/gate.cpp", "std::locale::global(std::locale());"),
    ("source", "core/gate/gate.cpp", "std::cerr << 1;"),
    ("source", "core/gate/gate.cpp", "auto t = std::chrono::system_clock::now();"),
    ("source", "core/gate/gate.cpp", "std::mt19937 chance;"),
    ("source", "core/gate/gate.cpp", "// TO" "DO: the rest"),
    ("source", "core/gate/gate.cpp", "int x; "),
    ("source", "core/gate/gate.cpp", "\tint x;"),
    ("source", "core/gate/gate.cpp", "//\n" * 401),
    ("source", "core/gate/gate.h", "int x;"),
    ("source", "app/walk/page.cpp", "QMessageBox::warning(this, a, b);"),
    ("source", "app/walk/page.cpp", "auto *l = new QLabel(text);"),
    ("source", "app/walk/page.cpp", "view->setHtml(text);"),
    ("source", "app/walk/page.cpp", "button->setToolTip(text);"),
    ("source", "app/walk/page.cpp", 'form->addRow(tr("x"), field);'),
    ("source", "app/walk/page.cpp", 'text = tr("%1 %2").arg(name(x)).arg(y);'),
    ("source", "app/walk/page.cpp", 'qDebug() << "x";'),
    ("source", "notes.txt", "at the top"),
    ("source", "trees/a/b.yaml", "key: value "),
]


def planted(root, files):
    for name, text in files.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text, encoding="utf-8")


bad = []
for check, name, added in [("layers", "", ""), ("source", "", ""), *PLANTED]:
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        planted(root, CLEAN)
        if name:
            planted(root, {name: CLEAN.get(name, "") + added + "\n"})
        found = list(CHECKS[check].faults(root))
        if [where for where, _, _ in found] != ([name] if name else []):
            bad.append(f"{check}: {added.strip()[:60]!r} in {name or 'a clean tree'}: {found or 'not found'}")
print("\n".join(bad) or f"{len(PLANTED)} planted faults found")
sys.exit(1 if bad else 0)
