#pragma once
// For widgets whose height follows from their width: they may grow to that height and no further, in any layout.
class QWidget;

namespace app {

// In the constructor, after the size policy: gives the vertical policy and follows every resize.
void followHeight(QWidget *widget);
// After the content changed.
void fitHeight(QWidget *widget);

} // namespace app
