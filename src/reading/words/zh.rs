//! Chinese, simplified and traditional.

use super::Row;
use crate::facts::ColourWord as C;
use crate::facts::LampKind as L;
use crate::reading::roles::Role as R;
use crate::reading::roles::Unit as U;

pub(super) const ROWS: &[Row] = &[
    (R::Unit(U::Watt), "瓦 瓦特"),
    (R::Unit(U::Kilowatt), "千瓦"),
    (R::Unit(U::Volt), "伏"),
    (R::Unit(U::Amp), "安"),
    (R::Unit(U::Other), "小时 小時 年 档"),
    (R::Unit(U::Length), "厘米 毫米 米"),
    (R::DrawAdjective, "实际 實際 实 真实 真實 实测 實測"),
    (
        R::DrawNoun,
        "实际功率 實際功率 功耗 实耗 實耗 耗电 耗電 真实功率 消耗功率 实际功耗 消耗 用电 耗電量 真實功率 实功率",
    ),
    (R::Input, "输入功率 輸入功率"),
    (R::Only, "仅 僅 只有 仅需"),
    (R::Power, "功率"),
    (R::Rating, "额定 額定 额定功率 額定功率 标称 最大 标称功率 最大功率 虚标"),
    (R::Equivalent, "等效 相当于 相當於 等同"),
    (R::Replaces, "替代 代替 取代 替换"),
    (R::Lamp(L::Hps), "高压钠灯 钠灯 鈉燈 高壓鈉燈"),
    (R::Lamp(L::Mh), "金卤灯 金属卤化物"),
    (R::Lamp(L::Incandescent), "白炽灯 卤素灯 白熾燈"),
    (R::Lamp(L::Fluorescent), "荧光灯 日光灯 节能灯 螢光燈"),
    (R::Diode, "灯珠 燈珠 珠 芯片 发光二极管"),
    (R::Double, "双芯 雙芯 双"),
    (R::Pieces, "颗 顆 个 個 只 支 粒 片"),
    (R::Quantity, "数量 數量"),
    (R::Kind, "单颗 單顆 每颗 单珠 每顆"),
    (R::Light, "灯 燈 生长灯 植物灯 补光灯 生長燈 植物燈"),
    (R::Part, "头 頭 条 面板"),
    (R::Pack, "件装 只装 个装 支装 套装 套裝 入组"),
    (R::Each, "每只 每个 每盏 每個 每支"),
    (R::Total, "总 共 合计 总共 總 总计"),
    (R::Device, "风扇 水泵 定时器 适配器 电源线 驱动 變壓器 風扇"),
    (R::Deny, "不是 非"),
    (R::Voltage, "电压 電壓 输入电压"),
    (R::Current, "电流 電流"),
    (R::Approx, "约 約"),
    (R::Colour(C::Red), "红 红光 红色 紅光 紅"),
    (R::Colour(C::Blue), "蓝 蓝光 蓝色 藍光 藍"),
    (R::Colour(C::White), "白光"),
    (R::Colour(C::WarmWhite), "暖白"),
    (R::Colour(C::CoolWhite), "冷白"),
    (R::Colour(C::Green), "绿"),
    (R::Colour(C::Uv), "紫外"),
    (R::Colour(C::Ir), "红外"),
];
