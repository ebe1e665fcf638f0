#pragma once
// A window with its own jobs folder and a clock that the test moves: what the tests of the walk drive by keys alone.
#include "app/shared/theme.h"
#include "app/store/content_files.h"
#include "app/walk/main_window.h"
#include "app/walk/meter_profile.h"

#include <QApplication>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include <filesystem>
#include <memory>

namespace walk {

inline const app::ContentFiles &content()
{
    static const app::ContentFiles files = [] {
        auto loaded = app::loadContent(SOURCE, std::filesystem::path(SOURCE) / "no_such_folder");
        return loaded ? std::move(*loaded) : app::ContentFiles{};
    }();
    return files;
}

inline core::Meter handheld(const std::string &category = "CAT III 600 V")
{
    core::Meter meter = app::usualMeter();
    meter.category = category;
    meter.probeZero = core::Amount{0.2, core::Unit::Ohm};
    return meter;
}

class Rig
{
public:
    explicit Rig(const core::Meter &meter = handheld(), const app::ContentFiles &files = content()) : m_files(files)
    {
        app::Theme::current().install();
        app::Theme::current().setShadeWish(app::ShadeWish::Light);
        app::Theme::current().setTextPercent(100);
        app::saveMeter(meter);
        open();
    }

    void open() // as after a restart
    {
        m_window = std::make_unique<app::MainWindow>(m_files, jobs(), [this] { return m_now; });
        m_window->show();
        (void)QTest::qWaitForWindowExposed(m_window.get());
        m_window->activateWindow();
        QApplication::setActiveWindow(m_window.get()); // offscreen nobody else makes a second window the active one
        settle();
    }
    void kill() { m_window.reset(); } // what was not written is gone

    app::MainWindow &window() { return *m_window; }
    app::WalkView &walk() { return *m_window->walk(); }
    const core::StateView &view() { return walk().job().view(); }
    std::filesystem::path jobs() const { return std::filesystem::path(m_folder.path().toStdString()) / "jobs"; }
    void pass(double seconds) { m_now = core::later(m_now, seconds); }

    void settle()
    {
        for (int i = 0; i < 4; ++i)
            QApplication::processEvents();
    }
    QWidget *focus()
    {
        // a second window of one process is not always made the active one offscreen; its own focus is what counts
        QWidget *widget = QApplication::focusWidget() != nullptr ? QApplication::focusWidget() : m_window->focusWidget();
        return widget != nullptr ? widget : m_window.get();
    }
    void key(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        pass(0.2);
        QTest::keyClick(focus(), static_cast<Qt::Key>(key), modifiers);
        settle();
    }
    void type(const QString &text)
    {
        pass(2);
        QTest::keyClicks(focus(), text);
        settle();
    }
    // Tab until the widget of this name has the focus; false: it is never reached.
    bool tabTo(const QString &name)
    {
        for (int i = 0; i < 120; ++i) {
            if (focus()->objectName() == name)
                return true;
            key(Qt::Key_Tab);
        }
        return false;
    }
    bool press(const QString &name)
    {
        if (!tabTo(name))
            return false;
        key(Qt::Key_Space);
        return true;
    }
    template<class T = QWidget>
    T *find(const QString &name)
    {
        return m_window->findChild<T *>(name);
    }

    // Every box of a safety screen ticked, then its way on, by keys.
    bool passScreen(const QString &way)
    {
        const auto boxes = view().step.boxes;
        for (const core::Named &box : boxes)
            if (!press(QStringLiteral("box:") + QString::fromStdString(box.id)))
                return false;
        return press(QStringLiteral("way:") + way);
    }
    // A dead reading typed, taken, and gone on from.
    void reading(const QString &typed)
    {
        type(typed);
        key(Qt::Key_Return);
        key(Qt::Key_Return);
    }
    bool answer(const QString &value)
    {
        const auto &answers = view().step.answers;
        for (std::size_t i = 0; i < answers.size(); ++i)
            if (QString::fromStdString(answers[i].value) == value) {
                key(Qt::Key_1 + static_cast<int>(i));
                return true;
            }
        return false;
    }

private:
    const app::ContentFiles &m_files;
    QTemporaryDir m_folder;
    core::Instant m_now{1772361360000, 1000000}; // 2026-03-01 10:36 UTC
    std::unique_ptr<app::MainWindow> m_window;
};

} // namespace walk
