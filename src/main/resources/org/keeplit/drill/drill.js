'use strict';
(function () {
  var drill = JSON.parse(document.getElementById('drill').textContent);
  var boxes = {};
  ['hints', 'where', 'then', 'scene', 'ask', 'hint', 'options', 'came', 'end'].forEach(function (id) {
    boxes[id] = document.getElementById(id);
  });
  var at = drill.start.place;
  var then = drill.start.then;
  var picks = [];
  var looks = 0;
  var going = null;

  function add(parent, tag, text) {
    var one = document.createElement(tag);
    if (text) { one.textContent = text; }
    parent.appendChild(one);
    return one;
  }

  function list(parent, texts) {
    var all = add(parent, 'ul');
    texts.forEach(function (text) { add(all, 'li', text); });
  }

  /* Pictures come from the same program as this page; every text in them is escaped there. */
  function picture(parent, number) {
    if (number >= 0) { add(parent, 'div').innerHTML = drill.pictures[number]; }
  }

  function show() {
    var place = drill.places[at];
    going = null;
    boxes.came.textContent = '';
    boxes.scene.textContent = '';
    picture(boxes.scene, place.picture);
    list(add(boxes.scene, 'div'), place.people);
    boxes.where.textContent = place.done === 1 ? '1 step is done.' : place.done + ' steps are done.';
    boxes.then.textContent = '';
    if (then.length) {
      add(boxes.then, 'p', 'Done since then, as written:');
      list(boxes.then, then);
    }
    boxes.options.textContent = '';
    place.options.forEach(function (option, i) {
      var button = add(add(boxes.options, 'li'), 'button');
      button.type = 'button';
      add(button, 'kbd', String(i + 1));
      button.appendChild(document.createTextNode(option.words));
      button.addEventListener('click', function () { pick(i); });
    });
    hint();
    if (place.options.length === 0) { end(); }
  }

  function hint() {
    boxes.hint.textContent = '';
    if (boxes.hints.checked) {
      drill.places[at].hint.forEach(function (text) { add(boxes.hint, 'li', text); });
    }
  }

  function pick(number) {
    var place = drill.places[at];
    var option = place.options[number];
    if (going || !option) { return; }
    picks.push({done: place.done, option: option, hints: boxes.hints.checked});
    var buttons = boxes.options.querySelectorAll('button');
    for (var i = 0; i < buttons.length; i++) { buttons[i].disabled = true; }
    var next = at;
    var after = [];
    var found = '';
    if (option.right) {
      /* What a look finds is not for the trainee to choose: each time another answer. */
      var to = option.next[option.next.length > 1 ? looks++ % option.next.length : 0];
      next = to.place;
      found = to.found;
      after = to.then;
    }
    boxes.came.textContent = '';
    var box = add(boxes.came, 'div');
    box.className = option.right ? 'good' : 'bad';
    add(box, 'p', (option.right ? 'Right: ' : 'Not right (' + option.endingWords + '): ') + option.words + '.');
    option.told.forEach(function (text) { add(box, 'p', text); });
    if (found) { add(box, 'p', 'What is found: ' + found + '.'); }
    add(boxes.came, 'p', option.now.length ? 'What it does to the feeder at once:' : 'At once nothing changes that the model knows.');
    list(boxes.came, option.now);
    if (!option.right && option.picture !== place.picture) { picture(boxes.came, option.picture); }
    var button = add(boxes.came, 'button', option.right ? 'Go on' : 'Take it back and choose again');
    button.type = 'button';
    button.id = 'go';
    going = function () {
      at = next;
      then = after;
      show();
      boxes.ask.focus();
    };
    button.addEventListener('click', going);
    button.focus();
  }

  function end() {
    boxes.ask.textContent = 'The drill is over.';
    boxes.end.textContent = '';
    var counts = {};
    var customers = 0;
    picks.forEach(function (pick) {
      counts[pick.option.endingWords] = (counts[pick.option.endingWords] || 0) + 1;
      customers = Math.max(customers, pick.option.customers);
    });
    add(boxes.end, 'h2', 'What you picked');
    list(boxes.end, Object.keys(counts).sort().map(function (word) { return counts[word] + ' times: ' + word; }));
    if (customers > 0) { add(boxes.end, 'p', 'The worst of them would have left ' + customers + ' customers without supply.'); }
    var table = add(boxes.end, 'table');
    var head = add(table, 'tr');
    ['after', 'pick', 'came out as', 'what came of it', 'hints'].forEach(function (text) { add(head, 'th', text).scope = 'col'; });
    picks.forEach(function (pick) {
      var row = add(table, 'tr');
      add(row, 'td', pick.done + ' steps');
      add(row, 'td', pick.option.words);
      add(row, 'td', pick.option.endingWords);
      add(row, 'td', pick.option.told.join(' '));
      add(row, 'td', pick.hints ? 'on' : 'off');
    });
    var again = add(boxes.end, 'button', 'Begin again');
    again.type = 'button';
    again.addEventListener('click', function () {
      at = 0;
      picks = [];
      boxes.end.textContent = '';
      boxes.ask.textContent = 'What comes next?';
      show();
    });
  }

  boxes.hints.addEventListener('change', hint);
  document.addEventListener('keydown', function (event) {
    if (event.ctrlKey || event.altKey || event.metaKey) { return; }
    if (/^[1-9]$/.test(event.key)) {
      pick(Number(event.key) - 1);
    } else if (event.key === 'Enter' && going && event.target.tagName !== 'BUTTON') {
      going();
    } else if (event.key === 'h' || event.key === 'H') {
      boxes.hints.checked = !boxes.hints.checked;
      hint();
    }
  });
  show();
})();
